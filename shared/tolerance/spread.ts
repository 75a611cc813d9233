import { shortest } from '../core/format.ts';
import { parameterText } from '../core/parameters/labels.ts';
import type { NumberRow } from '../core/parameters/row.ts';
import {
  PARAMETER_NAMES,
  type ParameterName,
  type Parameters,
  parameterRow,
} from '../core/parameters/table.ts';
import { cutNormal } from './sampling/normal.ts';

/** How a parameter differs from machine to machine. SI. */
export type Spread =
  /** Evenly within this share of the value of the scene, to either side: 0.05 is ± 5 %. */
  | { readonly kind: 'per cent'; readonly share: number }
  /** Evenly between two values. */
  | { readonly kind: 'uniform'; readonly from: number; readonly to: number }
  /** Normally, but nothing beyond so many standard deviations. */
  | { readonly kind: 'normal'; readonly mean: number; readonly deviation: number; readonly cut: number };

export type SpreadKind = Spread['kind'];

/** What each kind is called, and its entries in the order they are read. */
export const SPREAD_KINDS = {
  'per cent': { label: '± per cent', entries: ['share'] },
  uniform: { label: 'evenly between', entries: ['from', 'to'] },
  normal: { label: 'normal, cut off', entries: ['mean', 'deviation', 'cut'] },
} as const satisfies Record<SpreadKind, { readonly label: string; readonly entries: readonly string[] }>;

export type NumberName = { [K in ParameterName]: Parameters[K] extends number ? K : never }[ParameterName];

/** What can differ from machine to machine: numbers that are no counts. */
export const SPREADABLE = PARAMETER_NAMES.filter((name): name is NumberName => {
  const row = parameterRow(name);
  return row.kind === 'number' && !row.integer;
});

export function spreadRow(name: NumberName): NumberRow {
  return parameterRow(name) as NumberRow;
}

/** The value below which the share u of all machines lies; `base` is that of the scene. */
export function spreadValue(spread: Spread, base: number, u: number): number {
  switch (spread.kind) {
    case 'per cent':
      return base * (1 + spread.share * (2 * u - 1));
    case 'uniform':
      return spread.from + (spread.to - spread.from) * u;
    case 'normal':
      return spread.mean + spread.deviation * cutNormal(u, spread.cut);
  }
}

/** The values between which all machines lie. */
export function spreadEnds(spread: Spread, base: number): readonly [number, number] {
  const [a, b] = [spreadValue(spread, base, 0), spreadValue(spread, base, 1)];
  return a < b ? [a, b] : [b, a];
}

/** 'payload 4 kg ± 5 %' without the name. */
export function spreadText(name: NumberName, spread: Spread, base: number): string {
  switch (spread.kind) {
    case 'per cent':
      return `${parameterText(name, base)} ± ${shortest(spread.share, '%')}`;
    case 'uniform':
      return `${parameterText(name, spread.from)} to ${parameterText(name, spread.to)}`;
    case 'normal': {
      const deviation = shortest(spread.deviation, spreadRow(name).unit);
      return `${parameterText(name, spread.mean)}, σ ${deviation}, cut at ${shortest(spread.cut, '')} σ`;
    }
  }
}
