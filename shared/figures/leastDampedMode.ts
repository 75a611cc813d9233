import { valueAt } from '../core/at.ts';
import type { LoopAnalysis } from '../protocol/analysis.ts';

/** An oscillation of the closed loop: natural frequency, Hz, and damping ratio. */
interface Mode {
  readonly frequency: number;
  readonly damping: number;
}

/** More damping than this leaves nothing that an input shaper could save. */
const HIGHEST_DAMPING = 0.4;

/**
 * The oscillation of the closed loop that rings longest for its frequency; null where all are well damped. From the eigenvalues z over
 * one sample of `period` s: s = ln(z)/T, ω = |s|, D = −Re(s)/ω.
 */
export function leastDampedMode(
  { eigenvaluesRe, eigenvaluesIm }: Pick<LoopAnalysis, 'eigenvaluesRe' | 'eigenvaluesIm'>,
  period: number,
): Mode | null {
  let least: Mode | null = null;
  for (let k = 0; k < eigenvaluesRe.length; k++) {
    const [re, im] = [valueAt(eigenvaluesRe, k), valueAt(eigenvaluesIm, k)];
    if (im <= 0) continue;
    const decay = -Math.log(Math.hypot(re, im)) / period;
    const omega = Math.hypot(decay, Math.atan2(im, re) / period);
    const mode = { frequency: omega / (2 * Math.PI), damping: decay / omega };
    if (mode.damping < (least?.damping ?? HIGHEST_DAMPING)) least = mode;
  }
  return least;
}
