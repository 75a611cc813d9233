import { inUnit, ranged } from '../../../shared/core/format.ts';
import { FILTER_NUMBERS } from '../../../shared/core/parameters/filters.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import type { Resonance } from './resonance.ts';

interface PlacedNotch {
  readonly changes: ParameterChanges;
  /** What was done and why, for the status line. */
  readonly text: string;
}

/** A notch is never deeper than this: its zeros would have to meet the resonance too well. Common practice. */
const DEEPEST = 0.03;
/** Nor narrower: a resonance moves with load and position. */
const NARROWEST = 0.1;
const WIDEST = 1;

/**
 * A notch in a free filter for a resonance, or in words why there is none. Its zeros take the mode's place, its poles leave the line as it runs beside
 * the peak: depth 1/height and depth · width = damping ratio of the mode, as far as a notch should be that narrow or deep.
 */
export function notchFor(p: Parameters, { frequency, height, damping }: Resonance): PlacedNotch | string {
  const n = FILTER_NUMBERS.find((each) => p[`filter${each}`] === 'off');
  if (n === undefined) return 'All four filters are in use. Delete one of them first.';
  const depth = Math.min(Math.max(1 / height, DEEPEST), 1);
  const width = Math.min(Math.max(damping / depth, NARROWEST), WIDEST);
  const rounded = (value: number, digits: number) => Number(value.toPrecision(digits));
  const changes = {
    [`filter${n}`]: 'notch',
    [`filter${n}Frequency`]: rounded(frequency, 4),
    [`filter${n}Depth`]: rounded(depth, 3),
    [`filter${n}Damping`]: rounded(width, 3),
  } as ParameterChanges;
  const peak = `${inUnit(20 * Math.log10(height), '', 3)} dB above its surroundings`;
  return {
    changes,
    text:
      `Notch in filter ${n} at ${ranged(frequency, 'Hz')}, depth ${inUnit(depth, '')}, width ${inUnit(width, '')}: ` +
      `the resonance stands ${peak} and has a damping ratio of ${inUnit(damping, '')}.`,
  };
}
