import { at, present } from '../../shared/core/at.ts';
import { type Axes, type Axis, axes } from './axes.ts';
import { type Drawing, drawing } from './drawing.ts';
import { endLabelRoom, endLabels } from './endLabels.ts';
import { contains, footOf, rightOf, type Size } from './frame.ts';
import { inside } from './inside.ts';
import { area, curve, label, labelWidth, line, type Mark, point } from './marks.ts';
import type { Pen } from './pens.ts';

export interface Series {
  /** Written at the end of the line; empty for a line without words. */
  readonly name: string;
  readonly x: ArrayLike<number>;
  readonly y: ArrayLike<number>;
  readonly pen: Pen;
  /** It ends before its time: a cross marks where. */
  readonly stops?: boolean;
}

interface Level {
  readonly y: number;
  readonly text: string;
}

interface LineChart {
  /** What it shows, as text, for those who cannot see it. */
  readonly description: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  /** Heights that mean something, with their words on them. */
  readonly levels?: readonly Level[];
  /** What is allowed, between two heights; a dotted line at either. */
  readonly band?: readonly [from: number, to: number];
  /** Where a person reads the values. */
  readonly cursor?: number | undefined;
  /** Whatever else is drawn among the curves. */
  readonly values?: (axes: Axes) => readonly Mark[];
  /** Whatever else is written or drawn on top. */
  readonly notes?: (axes: Axes) => readonly Mark[];
}

export const USUAL_SIZE: Size = { width: 640, height: 260 };

/** Half the width of the cross where a curve stops, px. */
const CROSS = 5;

/** Curves over one axis, each with its name at its end. */
export function lineChart(chart: LineChart, size: Size = USUAL_SIZE): Drawing {
  const { description, series, levels = [], band, cursor, values, notes } = chart;
  const ends = series.filter(({ name }) => name !== '').flatMap((each) => endOf(each));
  const room = ends.length > 0 ? endLabelRoom(ends.map(({ name }) => name)) : 12;
  const made = axes(size, chart.x, chart.y, room);
  const { frame, x, y } = made;
  const [side, foot] = [rightOf(frame), footOf(frame)];
  const edges = new Set([...levels.map((level) => level.y), ...(band ?? [])]);
  return drawing(size, description, [
    ...made.marks,
    ...inside(frame, [
      ...(band ? [allowedBand(made, band)] : []),
      ...series.map((each) => curve(each.x, each.y, made, each.pen)),
      ...(values?.(made) ?? []),
      ...[...edges].map((each) =>
        line(frame.left, y.at(each), side, y.at(each), { width: 1.5, dash: 'dotted' }),
      ),
      ...series
        .filter(({ stops = false }) => stops)
        .flatMap((each) => endOf(each))
        .map((end) => point(x.at(end.x), y.at(end.y), 'cross', CROSS, { width: 2 })),
      ...(cursor === undefined ? [] : [line(x.at(cursor), frame.top, x.at(cursor), foot)]),
    ]),
    ...levels.map((level) => levelLabel(made, level, series)),
    ...(notes?.(made) ?? []),
    ...endLabels(
      frame,
      ends.map((end) => ({ text: end.name, y: y.at(end.y) })),
    ),
  ]);
}

function allowedBand({ frame, y }: Axes, [from, to]: readonly [number, number]): Mark {
  return area({ ...frame, top: y.at(to), height: y.at(from) - y.at(to) }, { colour: 'ink', opacity: 0.09 });
}

interface End {
  readonly name: string;
  readonly x: number;
  readonly y: number;
}

/** The last finite value of a curve under its name; nothing without any. */
function endOf({ name, x, y }: Series): End[] {
  for (let k = Math.min(x.length, y.length) - 1; k >= 0; k--) {
    const end = { name, x: at(x, k), y: at(y, k) };
    if (Number.isFinite(end.x + end.y)) return [end];
  }
  return [];
}

/** At that end of its line, above it or else below, where it hides least of the curves. */
function levelLabel({ frame, x, y }: Axes, { y: level, text }: Level, series: readonly Series[]): Mark {
  const edge = y.at(level);
  const within = [edge - 10, edge + 11].filter(
    (middle) => middle >= frame.top + 10 && middle <= footOf(frame) - 10,
  );
  const heights = within.length > 0 ? within : [edge - 10];
  const width = labelWidth(text);
  const hiddenBy = (left: number, middle: number) => {
    const box = { left, top: middle - 10, width, height: 20 };
    const inBox = (each: Series) =>
      Array.from(each.x).filter((value, k) => contains(box, x.at(value), y.at(at(each.y, k))));
    return series.reduce((sum, each) => sum + inBox(each).length, 0);
  };
  const places = heights.flatMap((middle) => [
    { middle, isRight: false, hidden: hiddenBy(frame.left + 8, middle) },
    { middle, isRight: true, hidden: hiddenBy(rightOf(frame) - 8 - width, middle) },
  ]);
  const least = Math.min(...places.map(({ hidden }) => hidden));
  const { middle, isRight } = present(places.find(({ hidden }) => hidden === least));
  return isRight
    ? label(rightOf(frame) - 8, middle, text, { halo: true, align: 'end' })
    : label(frame.left + 8, middle, text, { halo: true });
}
