import { at } from '../../shared/core/at.ts';
import { ranged } from '../../shared/core/format.ts';
import type { PositioningTest } from '../../shared/protocol/accuracy.ts';
import { type Axes, axes } from '../plot/axes.ts';
import { type Drawing, drawing } from '../plot/drawing.ts';
import { footOf, rightOf, type Size } from '../plot/frame.ts';
import { inside } from '../plot/inside.ts';
import { curve, label, labelWidth, line, type Mark, point } from '../plot/marks.ts';
import type { Pen } from '../plot/pens.ts';
import { rangeOf, widened } from '../plot/range.ts';

const POSITIONING_SIZE: Size = { width: 640, height: 300 };

const PEN: Pen = { colour: 'error', width: 2 };
/** In a narrower chart the figures are written below instead of beside it, px. */
const NARROW = 460;
const ROW = 20;
/** Room for the bars of accuracy and systematic error beside the frame, px. */
const SPANS = 48;
/** Bars and points of the two directions lie this far to either side of the target, px. */
const BESIDE = 4;
const CAP = 3;

/** All approaches of the targets from one side. */
interface Direction {
  readonly values: readonly (readonly number[])[];
  readonly means: readonly number[];
  readonly spreads: readonly number[];
  /** How far beside the target they are drawn, px. */
  readonly shift: number;
  readonly symbol: 'dot' | 'ring';
  readonly dash: 'solid' | 'dashed';
}

function directionsOf({ up, down, figures }: PositioningTest): readonly Direction[] {
  const { meanUp, meanDown, spreadUp, spreadDown } = figures;
  return [
    { values: up, means: meanUp, spreads: spreadUp, shift: -BESIDE, symbol: 'dot', dash: 'solid' },
    { values: down, means: meanDown, spreads: spreadDown, shift: BESIDE, symbol: 'ring', dash: 'dashed' },
  ];
}

/**
 * Deviation of the tool from each target after ISO 230-2: single approaches as points, their means
 * joined, bars of plus and minus 2 s; in +x full and solid, in −x open and dashed. On the scale of
 * all of `among`.
 */
export function positioningChart(
  test: PositioningTest,
  among: readonly PositioningTest[] = [test],
  size: Size = POSITIONING_SIZE,
): Drawing {
  const width = rangeOf(...among.map((each) => each.targets));
  const margin = 0.06 * (width[1] - width[0] || 1e-3);
  const isNarrow = size.width < NARROW;
  const text = figureText(test);
  const plot = isNarrow ? { ...size, height: size.height - 2 * ROW } : size;
  const made = axes(
    plot,
    { title: 'Target', unit: 'mm', from: width[0] - margin, to: width[1] + margin },
    { title: 'Deviation', unit: 'mm', ...widened(...rangeOf(...among.map(extent))) },
    isNarrow ? SPANS : SPANS + 14 + Math.max(...text.map((each) => labelWidth(each))),
  );
  const { frame } = made;
  const directions = directionsOf(test);
  return drawing(size, summary(test), [
    ...made.marks,
    ...inside(frame, [
      ...directions.flatMap((direction) => spreadBars(test, direction, made)),
      // Not moved aside: along a slope that would look like lost motion.
      ...directions.map(({ means, dash }) => curve(test.targets, means, made, { ...PEN, dash })),
      ...directions.flatMap((direction) => approaches(test, direction, made)),
    ]),
    ...spans(test, made),
    ...text.map((each, k) =>
      isNarrow
        ? label(4 + (k % 2) * (size.width / 2), plot.height + 9 + ROW * Math.floor(k / 2), each)
        : label(rightOf(frame) + SPANS + 8, frame.top + 19 + 22 * k, each),
    ),
  ]);
}

function spreadBars({ targets }: PositioningTest, direction: Direction, { x, y }: Axes): Mark[] {
  const { means, spreads, shift } = direction;
  return targets.flatMap((target, k) => {
    const [mean, reach] = [at(means, k), 2 * at(spreads, k)];
    return bar(x.at(target) + shift, y.at(mean + reach), y.at(mean - reach), { ...PEN, width: 1.25 });
  });
}

function approaches({ targets }: PositioningTest, direction: Direction, { x, y }: Axes): Mark[] {
  const { values, shift, symbol } = direction;
  return targets.flatMap((target, k) =>
    at(values, k).map((value) => point(x.at(target) + shift, y.at(value), symbol, 2, { ...PEN, width: 1 })),
  );
}

/** All that has to be on the scale, and zero. */
function extent(test: PositioningTest): number[] {
  const all = directionsOf(test).flatMap((direction) => [
    ...direction.values.flat(),
    ...endsOf(direction, 2),
    ...endsOf(direction, -2),
  ]);
  return [0, ...all];
}

/** The means, moved by so many times their spread. */
function endsOf({ means, spreads }: Direction, times: number): number[] {
  return means.map((mean, k) => mean + times * at(spreads, k));
}

function bar(x: number, top: number, foot: number, pen: Pen): Mark[] {
  return [
    line(x, top, x, foot, pen),
    line(x - CAP, top, x + CAP, top, pen),
    line(x - CAP, foot, x + CAP, foot, pen),
  ];
}

/**
 * Accuracy and systematic error beside the frame as what they measure: from the lowest to the highest bar, and from the lowest to the
 * highest mean. Their letters in the standard, A and E, would be taken for drives.
 */
function spans(test: PositioningTest, { frame, y }: Axes): Mark[] {
  const directions = directionsOf(test);
  const side = rightOf(frame);
  const span = (x: number, times: number, name: string) => {
    const [low, high] = rangeOf(
      ...directions.flatMap((direction) => [endsOf(direction, times), endsOf(direction, -times)]),
    );
    return [
      ...bar(x, y.at(high), y.at(low), { width: 1.25 }),
      label(x - 9, (frame.top + footOf(frame)) / 2, name, { align: 'middle', upward: true, halo: true }),
    ];
  };
  return [...span(side + 18, 2, 'accuracy'), ...span(side + 40, 0, 'systematic')];
}

function figureText({ figures }: PositioningTest): string[] {
  return [
    `Accuracy ${ranged(figures.accuracy, 'µm')}`,
    `Systematic ${ranged(figures.systematic, 'µm')}`,
    `Repeatability ${ranged(figures.repeatability, 'µm')}`,
    `Reversal ${ranged(figures.reversal, 'µm')}`,
  ];
}

function summary({ state, figures }: PositioningTest): string {
  const { accuracy, systematic, repeatability, reversal } = figures;
  return (
    `Positioning ${state}: accuracy ${ranged(accuracy, 'µm')}, ` +
    `systematic error ${ranged(systematic, 'µm')}, ` +
    `repeatability ${ranged(repeatability, 'µm')}, reversal error ${ranged(reversal, 'µm')}.`
  );
}
