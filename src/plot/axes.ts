import { printedUnit, UNITS, type Unit } from '../../shared/core/units.ts';
import { type Frame, footOf, rightOf, type Size } from './frame.ts';
import { labelling, labelText, unitText, unitUpTo } from './labelling.ts';
import { border, label, labelWidth, line, type Mark } from './marks.ts';
import type { Range } from './range.ts';
import { linearScale, logScale, type Scale } from './scale.ts';
import { decadeTicks, multiplesOf, stepAtLeast } from './ticks.ts';

/** What an axis shows: values in SI. */
export interface Axis extends Range {
  readonly title: string;
  /** The largest unit of its family that the values are shown in. */
  readonly unit: Unit;
  /** Powers of ten instead of equal steps; both ends above zero. */
  readonly log?: boolean;
}

/** A frame with its scales, and what is drawn below the curves. */
export interface Axes {
  readonly frame: Frame;
  readonly x: Scale;
  readonly y: Scale;
  readonly marks: readonly Mark[];
}

interface Tick {
  readonly value: number;
  /** Empty for a line without words. */
  readonly text: string;
}

interface Ticks {
  readonly ticks: readonly Tick[];
  /** What the labels are counted in, as it follows the title. */
  readonly unit: string;
}

/** Usual distances of labels, px: beside and above each other. */
const ACROSS = 50;
const UP = 30;
/** Smallest gap between labels beside each other, px. */
const GAP = 10;
const TOP = 10;
const BOTTOM = 42;
const AXIS_TITLE = 20;

/**
 * A frame with ticks of the row 1, 2, 5 and titles; `right` is left free beside it, for labels at
 * the ends of curves.
 */
export function axes({ width, height }: Size, xAxis: Axis, yAxis: Axis, right = 12): Axes {
  const [across, up] = [proper(xAxis), proper(yAxis)];
  const plotHeight = height - TOP - BOTTOM;
  const rows = ticksOf(up, plotHeight, UP, () => UP);
  const left = AXIS_TITLE + 10 + Math.max(0, ...rows.ticks.map(({ text }) => labelWidth(text)));
  const frame: Frame = { left, top: TOP, width: width - left - right, height: plotHeight };
  const columns = ticksOf(across, frame.width, ACROSS, (text) => labelWidth(text) + GAP);
  const [foot, side] = [footOf(frame), rightOf(frame)];
  const x = (across.log ? logScale : linearScale)(across.from, across.to, left, side);
  const y = (up.log ? logScale : linearScale)(up.from, up.to, foot, TOP);
  const hasZero = !up.log && up.from < 0 && up.to > 0;
  return {
    frame,
    x,
    y,
    marks: [
      ...columns.ticks.map(({ value }) => line(x.at(value), TOP, x.at(value), foot, { colour: 'line' })),
      ...rows.ticks.map(({ value }) => line(left, y.at(value), side, y.at(value), { colour: 'line' })),
      ...(hasZero ? [line(left, y.at(0), side, y.at(0), { colour: 'strong' })] : []),
      ...columns.ticks.map(({ value, text }) => label(x.at(value), foot + 12, text, { align: 'middle' })),
      ...rows.ticks.map(({ value, text }) => label(left - 6, y.at(value), text, { align: 'end' })),
      border(frame, { colour: 'ink' }),
      label(left + frame.width / 2, height - 11, `${across.title}${columns.unit}`, { align: 'middle' }),
      label(9, TOP + plotHeight / 2, `${up.title}${rows.unit}`, { align: 'middle', upward: true }),
    ],
  };
}

/** An axis with a length, whatever its ends are. */
function proper(axis: Axis): Axis {
  const { from, to, log = false } = axis;
  const hasLength = from < to && Number.isFinite(to - from) && (!log || from > 0);
  return hasLength ? axis : { ...axis, from: log ? 0.1 : 0, to: 1 };
}

/** Ticks on a length of px, `usual` px apart or more where a label has no `room`, px. */
function ticksOf(axis: Axis, length: number, usual: number, room: (text: string) => number): Ticks {
  if (axis.log) return decades(axis, length, room);
  const ticks = steps(axis, length / usual);
  const widest = Math.max(...ticks.ticks.map(({ text }) => room(text)));
  return widest > usual ? steps(axis, length / widest) : ticks;
}

function steps({ from, to, unit }: Axis, max: number): Ticks {
  // An hour has no row of 1, 2, 5 in seconds.
  const { factor } = unitUpTo(unit, to - from);
  const step = stepAtLeast((to - from) / factor / Math.max(max, 1)) * factor;
  const labels = labelling(from, to, step, unit);
  const ticks = multiplesOf(step, from, to).map((value) => ({ value, text: labelText(value, labels) }));
  return { ticks, unit: inText(unitText(labels, unit)) };
}

/**
 * Labels at 1, 2, 5 where there is room, else at the powers of ten; each in its own unit when they
 * span several.
 */
function decades({ from, to, unit }: Axis, length: number, room: (text: string) => number): Ticks {
  const decade = length / Math.log10(to / from);
  // Powers of ten of the unit that is read: of a millimetre, of an inch.
  const { factor } = UNITS[printedUnit(unit)];
  const all = decadeTicks(from / factor, to / factor).map(({ value, ...tick }) => ({
    ...tick,
    value: value * factor,
    text: withOwnUnit(value * factor, unit),
  }));
  const widest = Math.max(0, ...all.map(({ text }) => room(text)));
  // The closest neighbours are 1 and 2, and 5 and 10.
  const digits = Math.log10(2) * decade >= widest ? [1, 2, 5] : [1];
  const every = Math.max(1, Math.ceil(widest / decade));
  const lowest = all[0]?.power ?? 0;
  const ticks = all
    .filter(({ digit }) => digits.includes(digit))
    .map(({ value, power, text }) => ({ value, text: (power - lowest) % every === 0 ? text : '' }));
  return { ticks, unit: '' };
}

/** "in in" reads as a slip. */
function inText(unit: string): string {
  return unit === '' ? '' : ` in ${unit === 'in' ? 'inches' : unit}`;
}

function withOwnUnit(value: number, unit: Unit): string {
  const { text, factor } = unitUpTo(unit, value * (1 + 1e-9));
  return `${Number((value / factor).toPrecision(3))}${text === '' ? '' : ` ${text}`}`;
}
