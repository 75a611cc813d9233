import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import { responseOf } from '../analysis/response.ts';
import { type Complex, minus, ONE, over } from '../math/complex.ts';
import type { CrossPower } from './crossPower.ts';

/** Added and total force at one frequency, Hz. */
export interface MeasuredFrequency {
  readonly frequency: number;
  readonly power: CrossPower;
}

/** The loop that follows from S = total/added: L = 1/S − 1. */
export function measuredLoop(points: readonly MeasuredFrequency[], ended: string | null): MeasuredLoop {
  const sensitivity = points.map(({ power }) => power.response);
  const openLoop = sensitivity.map((s): Complex => minus(over(ONE, s), ONE));
  return {
    frequency: Float64Array.from(points, ({ frequency }) => frequency),
    openLoop: responseOf(openLoop),
    sensitivity: responseOf(sensitivity, 'highest'),
    coherence: Float64Array.from(points, ({ power }) => power.coherence),
    ended,
  };
}
