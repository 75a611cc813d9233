import type { Unit } from '../../../shared/core/units.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import { labelling, labelText, unitText, unitUpTo } from '../labelling.ts';
import { stepAtLeast, tickRange } from '../ticks.ts';
import {
  border,
  type Frame,
  labelWidth,
  line,
  linearScale,
  logScale,
  type Scale,
  type Size,
  textAt,
  upwardLabel,
} from './plot.ts';

/** What an axis shows: values in SI. */
export interface Axis {
  readonly title: string;
  /** The largest unit of its family that the values may stand in. */
  readonly unit: Unit;
  readonly from: number;
  readonly to: number;
  /** Powers of ten instead of equal steps; both ends above zero. */
  readonly log?: boolean;
}

export interface Axes {
  readonly frame: Frame;
  readonly x: Scale;
  readonly y: Scale;
  readonly drawn: Markup;
}

interface Tick {
  readonly value: number;
  /** Empty for a line without words. */
  readonly label: string;
}

/** Room between labels, px: beside and above each other. */
const ACROSS = 50;
const UP = 30;
const TOP = 10;
const BOTTOM = 42;
const AXIS_TITLE = 20;

/** A frame with ticks of the row 1, 2, 5 and titles; `right` is left free beside it, for labels at the ends of curves. */
export function axes({ width, height }: Size, xAxis: Axis, yAxis: Axis, right = 12): Axes {
  const plotHeight = height - TOP - BOTTOM;
  const rows = ticksOf(yAxis, plotHeight / UP);
  const left = AXIS_TITLE + 10 + Math.max(...rows.ticks.map(({ label }) => labelWidth(label)));
  const frame: Frame = { left, top: TOP, width: width - left - right, height: plotHeight };
  const columns = ticksOf(xAxis, frame.width / ACROSS);
  const scaleOf = ({ log }: Axis) => (log ? logScale : linearScale);
  const x = scaleOf(xAxis)(xAxis.from, xAxis.to, left, left + frame.width);
  const y = scaleOf(yAxis)(yAxis.from, yAxis.to, TOP + plotHeight, TOP);
  const [foot, side] = [TOP + plotHeight, left + frame.width];
  const zero =
    !yAxis.log && yAxis.from < 0 && yAxis.to > 0 ? line(left, y.at(0), side, y.at(0), { opacity: 0.6 }) : '';
  const drawn = markup`${columns.ticks.map(({ value }) => line(x.at(value), TOP, x.at(value), foot, 'grid'))}
${rows.ticks.map(({ value }) => line(left, y.at(value), side, y.at(value), 'grid'))}${zero}
${columns.ticks.map(({ value, label }) => textAt(x.at(value), foot + 17, label, 'middle'))}
${rows.ticks.map(({ value, label }) => textAt(left - 6, y.at(value) + 5, label, 'end'))}
${border(frame)}
${textAt(left + frame.width / 2, height - 6, `${xAxis.title}${columns.unit}`, 'middle')}
${upwardLabel(14, TOP + plotHeight / 2, `${yAxis.title}${rows.unit}`)}`;
  return { frame, x, y, drawn };
}

/** Both ends moved out to whole steps of the row 1, 2, 5, of which there are about `steps`. */
export function widened(
  low: number,
  high: number,
  steps = 5,
): { readonly from: number; readonly to: number } {
  const span = high - low || Math.abs(high) || 1;
  const step = stepAtLeast(span / steps);
  return { from: Math.floor(low / step + 1e-9) * step, to: Math.ceil((low + span) / step - 1e-9) * step };
}

/** Both ends moved out to the row 1, 2, 5 times powers of ten. */
export function widenedLog(low: number, high: number): { readonly from: number; readonly to: number } {
  return { from: 1 / stepAtLeast((1 - 1e-9) / low), to: stepAtLeast(high * (1 - 1e-9)) };
}

function ticksOf(axis: Axis, max: number): { readonly ticks: readonly Tick[]; readonly unit: string } {
  return axis.log ? decades(axis, max) : steps(axis, max);
}

function steps({ from, to, unit }: Axis, max: number): ReturnType<typeof ticksOf> {
  // An hour has no row of 1, 2, 5 in seconds.
  const { factor } = unitUpTo(unit, to - from);
  const step = stepAtLeast((to - from) / factor / Math.max(max, 1)) * factor;
  const labels = labelling(from, to, step, unit);
  const [first, last] = tickRange(from, to, step);
  const ticks = Array.from({ length: Math.max(last - first + 1, 0) }, (_, k) => {
    const value = (first + k) * step;
    return { value, label: labelText(value, labels) };
  });
  return { ticks, unit: inText(unitText(labels, unit)) };
}

/** Labels at 1, 2, 5 where there is room, else at the powers of ten; each in its own unit when they span several. */
function decades({ from, to, unit }: Axis, max: number): ReturnType<typeof ticksOf> {
  const count = Math.log10(to / from);
  const digits = count * 3 <= max ? [1, 2, 5] : [1];
  const every = Math.max(1, Math.ceil(count / max));
  const ticks: Tick[] = [];
  const lowest = Math.floor(Math.log10(from) + 1e-9);
  for (let power = lowest; 10 ** power <= to * (1 + 1e-9); power++) {
    for (const digit of digits) {
      const value = Number(`${digit}e${power}`);
      if (value < from * (1 - 1e-9) || value > to * (1 + 1e-9)) continue;
      ticks.push({ value, label: (power - lowest) % every === 0 ? withOwnUnit(value, unit) : '' });
    }
  }
  return { ticks, unit: '' };
}

function inText(unit: string): string {
  return unit === '' ? '' : ` in ${unit}`;
}

function withOwnUnit(value: number, unit: Unit): string {
  const { text, factor } = unitUpTo(unit, value * (1 + 1e-9));
  return `${Number((value / factor).toPrecision(3))}${text === '' ? '' : ` ${text}`}`;
}
