import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { type Complex, over, plus, scaled, unit } from '../../math/complex.ts';

/** Number of images of the sampling on each side. */
const IMAGES = 3;

/*
 * A current record has one sample for each period of the position loop, taken when the command
 * steps, and the current of a drive follows its command in steps: the samples do not show the mean.
 * The spectrum of the samples is that of the current and of its images around the multiples of the
 * sample rate, which the mass does not follow. Behind a command held for a period Tp, with the loop
 * 1/(1 + s e^{sT_d}/ω_bw),
 *
 *   I(f)/I_sampled(f) = C(f)/Σ_m C(f + m/Tp)        C(f) = e^{−jπfTp} sinc(fTp)/(1 + jω e^{jωT_d}/ω_bw)
 *
 * T_d = 1.5 periods of the current loop: one until its voltage is applied, half of one while it is
 * held. Source: the sampling theorem.
 */
export class SampledCurrent {
  readonly #period: number;
  readonly #bandwidth: number;
  readonly #dead: number;

  /** @param period of the samples, s */
  constructor(period: number, p: Parameters) {
    this.#period = period;
    this.#bandwidth = 2 * Math.PI * p.currentBandwidth;
    this.#dead = 1.5 / p.currentRate;
  }

  /** The current over its samples at a frequency, Hz. */
  factor(frequency: number): Complex {
    let sum: Complex = { re: 0, im: 0 };
    for (let m = -IMAGES; m <= IMAGES; m++) sum = plus(sum, this.#content(frequency + m / this.#period));
    return over(this.#content(frequency), sum);
  }

  #content(frequency: number): Complex {
    const omega = 2 * Math.PI * frequency;
    const half = Math.PI * frequency * this.#period;
    const held = half === 0 ? 1 : Math.sin(half) / half;
    const angle = omega * this.#dead;
    const lag = omega / this.#bandwidth;
    const loop = { re: 1 - lag * Math.sin(angle), im: lag * Math.cos(angle) };
    return over(scaled(unit(-half), held), loop);
  }
}
