import type { Parameters } from '../../../shared/core/parameters/table.ts';

/** Images of the sampling that are taken in, to each side. */
const IMAGES = 3;

/*
 * A current record has one sample a period of the position loop, taken when the command steps, and a drive's current runs in steps with its
 * command: the samples do not show the mean. The spectrum of the samples is that of the current and of its images round the multiples
 * of the sample rate, which the mass does not follow. Behind a command held for a period Tp, with the loop 1/(1 + s e^{sT_d}/ω_bw),
 *
 *   I(f)/I_sampled(f) = C(f)/Σ_m C(f + m/Tp)        C(f) = e^{−jπfTp} sinc(fTp)/(1 + jω e^{jωT_d}/ω_bw)
 *
 * T_d = 1.5 periods of the current loop: one until its voltage is applied, half of one while it is held. Source: the sampling theorem.
 */
export class SampledCurrent {
  private readonly bandwidth: number;
  private readonly dead: number;

  constructor(
    private readonly period: number,
    p: Parameters,
  ) {
    this.bandwidth = 2 * Math.PI * p.currentBandwidth;
    this.dead = 1.5 / p.currentRate;
  }

  /** Writes the current over its samples at a frequency (Hz) as a complex factor. */
  factor(frequency: number): { re: number; im: number } {
    let [re, im] = [0, 0];
    let own = { re: 1, im: 0 };
    for (let m = -IMAGES; m <= IMAGES; m++) {
      const image = this.content(frequency + m / this.period);
      re += image.re;
      im += image.im;
      if (m === 0) own = image;
    }
    const size = re * re + im * im;
    return { re: (own.re * re + own.im * im) / size, im: (own.im * re - own.re * im) / size };
  }

  private content(frequency: number): { re: number; im: number } {
    const omega = 2 * Math.PI * frequency;
    const half = Math.PI * frequency * this.period;
    const held = half === 0 ? 1 : Math.sin(half) / half;
    const angle = omega * this.dead;
    const lag = omega / this.bandwidth;
    const re = 1 - lag * Math.sin(angle);
    const im = lag * Math.cos(angle);
    const size = re * re + im * im;
    const [c, s] = [Math.cos(half), -Math.sin(half)];
    return { re: (held * (c * re + s * im)) / size, im: (held * (s * re - c * im)) / size };
  }
}
