import { at } from '../../shared/core/at.ts';
import { parameterLabel } from '../../shared/core/parameters/labels.ts';
import {
  isGood,
  type Limits,
  RUN_FIGURES,
  type RunFigureName,
  type RunResult,
} from '../../shared/tolerance/runFigures.ts';
import { type NumberName, spreadRow } from '../../shared/tolerance/spread.ts';
import { axes } from '../plot/axes.ts';
import { type Drawing, drawing } from '../plot/drawing.ts';
import { rightOf, type Size } from '../plot/frame.ts';
import { inside } from '../plot/inside.ts';
import { label, line, point } from '../plot/marks.ts';
import { rangeOf } from '../plot/range.ts';

const SIZE: Size = { width: 640, height: 300 };
const MARGIN = 0.05;
/** Height of the shelf for machines without the figure, as a share of the others'. */
const SHELF = 0.15;
/** Points more than this are not told apart, and slow to draw. */
const MOST_POINTS = 1200;

/** A machine that has run, with its values of what spreads. */
export interface ScatteredMachine {
  readonly result: RunResult;
  readonly values: Float64Array;
}

/** Machines that are drawn: evenly from all good ones, those that are not, and always the worst. */
export function chosenMachines(
  machines: readonly ScatteredMachine[],
  limits: Limits,
  worst: number,
): readonly ScatteredMachine[] {
  if (machines.length <= MOST_POINTS) return machines;
  const good = machines.filter(({ result }) => isGood(result, limits));
  const bad = thinned(
    machines.filter(({ result }) => !isGood(result, limits)),
    MOST_POINTS / 2,
  );
  const chosen = [...thinned(good, MOST_POINTS - bad.length), ...bad];
  return chosen.some(({ result }) => result.run === worst)
    ? chosen
    : [...chosen, ...machines.filter(({ result }) => result.run === worst)];
}

/** So many of a list at most, evenly from all of it. */
function thinned<T>(list: readonly T[], most: number): T[] {
  const every = Math.max(list.length / most, 1);
  return list.filter((_, k) => Math.floor(k / every) !== Math.floor((k - 1) / every));
}

/** A figure of each machine over one of its parameters, which is the `index`-th of its values: dots are good, crosses are not; the worst has a ring. */
export function scatterChart(
  across: NumberName,
  index: number,
  up: RunFigureName,
  machines: readonly ScatteredMachine[],
  limits: Limits,
  worst: number,
): Drawing {
  const { label: title, unit } = RUN_FIGURES[up];
  const points = machines.map(({ result, values }) => ({ result, value: at(values, index) }));
  const measured = points.flatMap(({ result }) => result.figures[up] ?? []);
  const [left, right] = widenedBy(MARGIN, rangeOf(points.map(({ value }) => value)));
  const [low, high] = widenedBy(MARGIN, rangeOf(measured));
  const hasShelf = measured.length < points.length;
  const shelf = high + (hasShelf ? SHELF * (high - low) : 0);
  const made = axes(
    SIZE,
    { title: parameterLabel(across), unit: spreadRow(across).unit, from: left, to: right },
    { title, unit, from: low, to: shelf },
  );
  const { frame, x, y } = made;
  const marks = points.map(({ value, result }) => {
    const isRight = isGood(result, limits);
    const isWorst = result.run === worst;
    const height = y.at(result.figures[up] ?? (high + shelf) / 2);
    if (isWorst) return point(x.at(value), height, 'ring', 6, { colour: 'alarm', width: 2 });
    return point(x.at(value), height, isRight ? 'dot' : 'cross', isRight ? 1.8 : 3.5, {
      colour: isRight ? 'accent' : 'alarm',
      opacity: isRight ? 0.6 : 1,
    });
  });
  const edge = y.at(high);
  const shelfMarks = hasShelf
    ? [
        line(frame.left, edge, rightOf(frame), edge, { dash: 'dotted' }),
        label(rightOf(frame) - 6, edge - 12, 'not settled or tripped', { align: 'end', halo: true }),
      ]
    : [];
  const description = `${title} over ${parameterLabel(across)} of ${points.length} machines.`;
  return drawing(SIZE, description, [...made.marks, ...inside(frame, marks), ...shelfMarks]);
}

function widenedBy(share: number, [low, high]: readonly [number, number]): readonly [number, number] {
  const margin = share * (high - low) || share * Math.abs(high) || share;
  return [low - margin, high + margin];
}
