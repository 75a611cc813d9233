import { unitFor } from '../../shared/core/format.ts';
import { printedUnit, UNITS, type Unit } from '../../shared/core/units.ts';
import { decimalsOf, stepAtLeast } from './ticks.ts';

/**
 * How the values along an axis are printed: as (value - base)/factor with `decimals`. The base is
 * zero unless the axis shows a small detail far from zero, such as nanometres at 0.3 m.
 */
export interface Labelling {
  readonly base: number;
  /** The unit as text and its size in SI. */
  readonly unit: string;
  readonly factor: number;
  readonly decimals: number;
}

/** Into so many steps a range is told apart, at least. */
const RANGE_STEPS = 4;

/** Steps finer than this share of the values are counted from a base. */
const DETAIL = 1e-4;

/**
 * Labels for [low, high] in steps of `step`, SI; `largest` names the family of units and the
 * largest one to be used.
 */
export function labelling(low: number, high: number, step: number, largest: Unit): Labelling {
  const size = Math.max(Math.abs(low), Math.abs(high));
  const base = step < DETAIL * size ? roundTo((low + high) / 2, 10 ** Math.ceil(Math.log10(high - low))) : 0;
  const { text: unit, factor } = unitUpTo(largest, base === 0 ? size : high - low);
  return { base, unit, factor, decimals: decimalsOf(step / factor) };
}

/** The unit of its family that suits a size, but none beyond `largest`. */
export function unitUpTo(largest: Unit, size: number): { text: string; factor: number } {
  const unit = unitFor(size, largest);
  const most = printedUnit(largest);
  const limit = UNITS[most].factor;
  return unit.factor > limit ? { text: most, factor: limit } : unit;
}

function roundTo(value: number, step: number): number {
  return Math.round(value / step) * step;
}

/**
 * Text of an SI value under a labelling, with more decimals than its ticks if a readout wants them.
 */
export function labelText(value: number, { base, factor, decimals }: Labelling, more = 0): string {
  if (!Number.isFinite(value)) return '–';
  const text = ((value - base) / factor).toFixed(decimals + more);
  return /^-[0.]*$/.test(text) ? text.slice(1) : text.replace('-', '−');
}

/**
 * The values of a column for reading, to about `resolution`, SI: a range where it can be told from a single value, else its
 * middle.
 */
export function readingText(low: number, high: number, labels: Labelling, resolution: number): string {
  const decimalsFor = (step: number) =>
    Math.max(0, decimalsOf(stepAtLeast(step / labels.factor)) - labels.decimals);
  const more = decimalsFor(resolution);
  // The ends of a range as finely as they differ: more digits would say nothing and take room.
  const fewer = high > low ? Math.min(more, decimalsFor((high - low) / RANGE_STEPS)) : more;
  const [from, to] = [labelText(low, labels, fewer), labelText(high, labels, fewer)];
  return from === to || high - low < resolution ? labelText((low + high) / 2, labels, more) : `${from}…${to}`;
}

/** What the labels are counted in: 'µm', or 'nm from 100.000000 mm'. */
export function unitText({ base, unit, factor }: Labelling, largest: Unit): string {
  if (base === 0) return unit;
  const far = printedUnit(largest);
  const limit = UNITS[far].factor;
  const anchor = (base / limit).toFixed(decimalsOf(factor / limit)).replace('-', '−');
  return `${unit} from ${anchor} ${far}`;
}
