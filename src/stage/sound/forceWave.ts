import { valueAt } from '../../../shared/core/at.ts';
import type { History } from '../../history/history.ts';

/** Samples per simulated second: what can be heard of a force, and no more than a current loop records. */
export const WAVE_RATE = 8000;
/** A force below this frequency moves the table and is not heard, Hz. */
const LOWEST = 20;
/** Loudest sample, of a full scale of 1: −12 dB, so that no oscillation hurts an ear. */
export const LOUDEST = 0.25;
/** Longest stretch that is caught up with, s. */
const LONGEST = 0.25;

/**
 * The motor force of a run as a sound, stretch by stretch: its steady part removed by a first-order high-pass, the rest over the full
 * scale and limited smoothly to ±LOUDEST.
 */
export class ForceWave {
  #next = 0;
  #lows = new Float64Array(0);
  #highs = new Float64Array(0);
  #force = 0;
  #swing = 0;

  /** What was recorded since the last call, N, without its steady part; empty where nothing was, or the run began anew. */
  read(history: Pick<History, 'latestTime' | 'columns'>): Float64Array {
    const last = Math.floor(history.latestTime * WAVE_RATE);
    const count = last - this.#next;
    const first = this.#next;
    this.#next = Number.isFinite(last) ? last : 0;
    if (!(count > 0 && count <= LONGEST * WAVE_RATE)) return new Float64Array(0);
    if (this.#lows.length < count) {
      this.#lows = new Float64Array(count);
      this.#highs = new Float64Array(count);
    }
    history.columns('motorForce', first / WAVE_RATE, last / WAVE_RATE, count, this.#lows, this.#highs);
    const keep = Math.exp((-2 * Math.PI * LOWEST) / WAVE_RATE);
    return Float64Array.from({ length: count }, (_, i) => {
      const middle = (valueAt(this.#lows, i) + valueAt(this.#highs, i)) / 2;
      const force = Number.isNaN(middle) ? this.#force : middle;
      this.#swing = keep * (this.#swing + force - this.#force);
      this.#force = force;
      return this.#swing;
    });
  }
}

/** A force as a sample: `full` N give about the loudest. */
export function sampleOf(force: number, full: number): number {
  return LOUDEST * Math.tanh(force / full);
}

/** Amplitude at each frequency, Hz: one term of the Fourier sum, under a Hann window whose mean is taken out (Harris 1978). */
export function amplitudesAt(wave: Float64Array, frequencies: readonly number[]): number[] {
  const n = wave.length;
  return frequencies.map((frequency) => {
    let [re, im] = [0, 0];
    for (let i = 0; i < n; i++) {
      const window = 1 - Math.cos((2 * Math.PI * (i + 0.5)) / n);
      const phase = (2 * Math.PI * frequency * i) / WAVE_RATE;
      re += window * valueAt(wave, i) * Math.cos(phase);
      im += window * valueAt(wave, i) * Math.sin(phase);
    }
    return (2 * Math.hypot(re, im)) / n;
  });
}
