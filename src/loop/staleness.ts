import type { LoopAnalysis } from '../../shared/protocol/analysis.ts';
import { placeOn, power } from '../plot/interpolate.ts';

/** A measured loop counts as another one when |L| has moved by more than this somewhere in it: 1 dB. */
const MUCH = Math.log(10 ** (1 / 20));

/** Whether the loop differs by more than 1 dB from what it was, at any of these frequencies (Hz). */
export function hasMoved(then: LoopAnalysis, now: LoopAnalysis, frequencies: Float64Array): boolean {
  const at = ({ frequency, openLoop }: LoopAnalysis, f: number) =>
    Math.log(power(openLoop.magnitude, placeOn(frequency, f)));
  return frequencies.some((f) => Math.abs(at(now, f) - at(then, f)) > MUCH);
}
