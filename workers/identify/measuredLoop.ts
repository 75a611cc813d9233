import type { MeasuredLoop } from '../../shared/protocol/analysis.ts';
import { type Complex, ONE, over, plus, scaled } from '../analysis/complex.ts';
import { responseOf } from '../analysis/response.ts';
import type { CrossPower } from './crossPower.ts';

/** Added and total force at one frequency, Hz. */
export interface MeasuredFrequency {
  readonly frequency: number;
  readonly power: CrossPower;
}

/** The loop that stands behind S = total/added: L = 1/S − 1. */
export function measuredLoop(points: readonly MeasuredFrequency[], ended: string | null): MeasuredLoop {
  const sensitivity = points.map(({ power }) => power.response);
  const openLoop = sensitivity.map((s): Complex => plus(over(ONE, s), scaled(ONE, -1)));
  return {
    frequency: Float64Array.from(points, ({ frequency }) => frequency),
    openLoop: responseOf(openLoop),
    sensitivity: responseOf(sensitivity, 'highest'),
    coherence: Float64Array.from(points, ({ power }) => power.coherence),
    ended,
  };
}
