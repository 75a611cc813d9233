import { isInUse } from '../../shared/axis/inUse.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { NumberName, Spread, SpreadKind } from '../../shared/tolerance/spread.ts';
import { spreadRow } from '../../shared/tolerance/spread.ts';

const within = (share: number): Spread => ({ kind: 'per cent', share });

/** What is not quite known of most machines, and how little (common practice, no source). */
const USUAL: readonly (readonly [NumberName, Spread])[] = [
  ['payload', within(0.1)],
  ['fluxDeviation', { kind: 'normal', mean: 0, deviation: 0.02, cut: 3 }],
  ['linkStiffness', within(0.2)],
  ['sealFriction', within(0.5)],
  ['nutDrag', within(0.5)],
  ['viscous', within(0.3)],
  ['interpolation1', within(0.5)],
  ['baseFrequency', within(0.1)],
];

/** What a study of this scene begins with: spreads of what it has. */
export function offeredSpreads(p: Parameters): (readonly [NumberName, Spread])[] {
  return USUAL.filter(([name, { kind }]) => isInUse(name, p) && (kind !== 'per cent' || p[name] !== 0));
}

/** Values to begin with for a parameter that is at `base`. */
export function offeredSpread(name: NumberName, base: number, kind: SpreadKind): Spread {
  const { min, max } = spreadRow(name);
  const inRange = (value: number) => Math.min(Math.max(value, min), max);
  const size = 0.1 * Math.abs(base) || 0.01 * (max - min);
  switch (kind) {
    case 'per cent':
      return within(0.05);
    case 'uniform':
      return { kind, from: inRange(base - size), to: inRange(base + size) };
    case 'normal': {
      const deviation = size / 3;
      return { kind, mean: Math.max(base, min > 0 ? min + size : base), deviation, cut: 3 };
    }
  }
}
