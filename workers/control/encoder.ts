import { interpolationTerms, scaleErrorTerms } from '../../shared/axis/periodic.ts';
import { valueAt } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { NormalNoise } from './noise.ts';

/*
 * What the loop can see of a position u (m):
 *
 *   x_m = q round((u' + a1 sin(2πu'/p) + a2 sin(4πu'/p) + a_l sin(2πu'/λ_l) + a_h sin(2πu'/p_h) + noise)/q)
 *   u'  = u (1 − α_s (T_scale − T_a))
 *
 * q 0 is not rounded. One noise number per reading, drawn even when its rms is 0, so that switching noise on and off
 * leaves the sequence alone.
 */
export class Encoder {
  readonly #noise: NormalNoise;
  /** Of the waves of the reading, m. */
  #amplitudes = new Float64Array(0);
  #periods = new Float64Array(0);
  #noiseRms = 0;
  #count = 0;

  constructor(seed: number) {
    this.#noise = new NormalNoise(seed);
  }

  configure(p: Parameters): void {
    const waves = [...interpolationTerms(p), ...scaleErrorTerms(p)].filter(({ amplitude }) => amplitude > 0);
    this.#amplitudes = Float64Array.from(waves, ({ amplitude }) => amplitude);
    this.#periods = Float64Array.from(waves, ({ period }) => period);
    this.#noiseRms = p.encoderNoise;
    this.#count = p.encoderResolution;
  }

  /** The reading of a position u (m) through a scale with a strain of so much. */
  read(u: number, strain: number): number {
    const scaled = u * (1 - strain);
    let reading = scaled;
    for (let k = 0; k < this.#amplitudes.length; k++)
      reading += valueAt(this.#amplitudes, k) * Math.sin((2 * Math.PI * scaled) / valueAt(this.#periods, k));
    reading += this.#noiseRms * this.#noise.next();
    return this.#count > 0 ? this.#count * Math.round(reading / this.#count) : reading;
  }
}
