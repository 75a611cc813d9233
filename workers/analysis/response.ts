import type { Response } from '../../shared/protocol/analysis.ts';
import { type Complex, magnitude, phase } from '../math/complex.ts';

/** Phase at the end that is known by itself: between −315° and 45°, so that three integrators read −270°. */
const LOWEST_PHASE = -1.75 * Math.PI;

/** Magnitude, and phase without jumps, counted from the `known` end of the curve. */
export function responseOf(values: readonly Complex[], known: 'lowest' | 'highest' = 'lowest'): Response {
  const turn = 2 * Math.PI;
  const phases = Float64Array.from(values, phase);
  for (let i = 1; i < phases.length; i++) {
    phases[i]! -= turn * Math.round((phases[i]! - phases[i - 1]!) / turn);
  }
  const end = (known === 'lowest' ? phases[0] : phases[phases.length - 1]) ?? 0;
  const shift = turn * Math.floor((end - LOWEST_PHASE) / turn);
  return { magnitude: Float64Array.from(values, magnitude), phase: phases.map((value) => value - shift) };
}
