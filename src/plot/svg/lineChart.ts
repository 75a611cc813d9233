import { type Markup, markup } from '../../ui/markup.ts';
import { type Axes, type Axis, axes } from './axes.ts';
import { endLabelRoom, endLabels } from './endLabels.ts';
import { area, clipped, curve, drawing, labelOnWhite, line, type Pen, type Size } from './plot.ts';

export interface Series {
  /** Written at the end of the line; empty for a line without words. */
  readonly name: string;
  readonly x: readonly number[];
  readonly y: readonly number[];
  readonly pen: Pen;
  /** It ends before its time: a cross marks where. */
  readonly stops?: boolean;
}

export interface Level {
  readonly y: number;
  readonly text: string;
}

export interface LineChart {
  /** For whoever cannot see it. */
  readonly text: string;
  readonly x: Axis;
  readonly y: Axis;
  readonly series: readonly Series[];
  /** Heights that mean something, with their words on them. */
  readonly levels?: readonly Level[];
  /** Where the words of levels hide no curve. */
  readonly levelText?: 'left' | 'right';
  /** What is allowed, between two heights; a dotted line at either. */
  readonly band?: readonly [from: number, to: number];
  /** Where a person reads the values. */
  readonly cursor?: number | undefined;
  /** Whatever else is drawn on it. */
  readonly marks?: (axes: Axes) => Markup;
}

export const USUAL_SIZE: Size = { width: 640, height: 260 };

/** Curves over one axis, each with its name at its end. */
export function lineChart(chart: LineChart, size: Size = USUAL_SIZE): Markup {
  const { text, series, levels = [], band, cursor, marks } = chart;
  const named = series.filter(({ name, y }) => name !== '' && y.length > 0);
  const room = named.length > 0 ? endLabelRoom(named.map(({ name }) => name)) : 12;
  const made = axes(size, chart.x, chart.y, room);
  const { frame, x, y, drawn } = made;
  const side = frame.left + frame.width;
  const edges = new Set([...levels.map((level) => level.y), ...(band ?? [])]);
  const inner = [
    band
      ? area({ ...frame, top: y.at(band[1]), height: y.at(band[0]) - y.at(band[1]) }, 'currentColor', 0.09)
      : markup``,
    ...series.map((each) =>
      curve(
        each.x.length,
        (k) => x.at(each.x[k]!),
        (k) => y.at(each.y[k]!),
        each.pen,
      ),
    ),
    ...[...edges].map((each) => line(frame.left, y.at(each), side, y.at(each), { width: 1.5, dash: '2 3' })),
    ...series.filter(({ stops, y: values }) => stops && values.length > 0).map((each) => cross(made, each)),
    cursor === undefined
      ? markup``
      : line(x.at(cursor), frame.top, x.at(cursor), frame.top + frame.height, {}),
  ];
  return drawing(
    size,
    text,
    markup`${drawn}
${clipped(frame, inner)}
${levels.map(({ y: value, text: said }) => levelLabel(made, value, said, chart.levelText))}
${marks ? marks(made) : ''}
${endLabels(
  frame,
  named.map(({ name, y: values }) => ({ text: name, y: y.at(lastOf(values)) })),
)}`,
  );
}

/** Half the width of a cross, px. */
const CROSS = 5;

function cross({ x, y }: Axes, series: Series): Markup {
  const [px, py] = [x.at(lastOf(series.x)), y.at(lastOf(series.y))];
  return markup`${line(px - CROSS, py - CROSS, px + CROSS, py + CROSS, { width: 2 })}${line(px - CROSS, py + CROSS, px + CROSS, py - CROSS, { width: 2 })}`;
}

/** Above its line, or below it where there is no room above. */
function levelLabel(
  { frame, y }: Axes,
  value: number,
  label: string,
  side: 'left' | 'right' = 'left',
): Markup {
  const at = y.at(value);
  const height = at + (at < frame.top + 20 ? 16 : -5);
  return side === 'left'
    ? labelOnWhite(frame.left + 8, height, label)
    : labelOnWhite(frame.left + frame.width - 8, height, label, 'end');
}

function lastOf(values: readonly number[]): number {
  return values[values.length - 1]!;
}
