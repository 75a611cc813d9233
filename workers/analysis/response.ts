import type { Response } from '../../shared/protocol/analysis.ts';
import { type Complex, magnitude, phase } from '../math/complex.ts';

/**
 * Lowest phase at the end of a curve that is known without counting turns: −315°, so that three
 * integrators give −270°.
 */
const LOWEST_PHASE = -1.75 * Math.PI;

/** Magnitude, and phase without jumps, counted from the `known` end of the curve. */
export function responseOf(values: readonly Complex[], known: 'lowest' | 'highest' = 'lowest'): Response {
  const turn = 2 * Math.PI;
  let last = 0;
  const phases = Float64Array.from(values, (value, k) => {
    const angle = phase(value);
    last = k === 0 ? angle : angle - turn * Math.round((angle - last) / turn);
    return last;
  });
  const end = (known === 'lowest' ? phases[0] : phases.at(-1)) ?? 0;
  const shift = turn * Math.floor((end - LOWEST_PHASE) / turn);
  return { magnitude: Float64Array.from(values, magnitude), phase: phases.map((value) => value - shift) };
}
