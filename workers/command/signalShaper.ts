import { type Shaping, shaperImpulses } from '../../shared/motion/shaping.ts';
import { MovingAverage } from './movingAverage.ts';
import { Taps } from './taps.ts';

/** One signal of the command on its way through jerk ramp, input shaper and setpoint filter. What passes no stage stays bit by bit. */
export class SignalShaper {
  readonly #average: MovingAverage | null;
  readonly #taps: Taps | null;
  /** Share of its distance that the filter covers in one sample; null without one. */
  readonly #approach: number | null;
  #filtered = 0;

  /** `period` of sampling in s. */
  constructor(shaping: Shaping, period: number) {
    const { jerkRamp, shaper, setpointFilter } = shaping;
    this.#average = jerkRamp > period ? new MovingAverage(jerkRamp / period) : null;
    this.#taps = shaper === 'none' ? null : new Taps(shaperImpulses(shaping), period);
    this.#approach = setpointFilter > 0 ? -Math.expm1(-period / setpointFilter) : null;
  }

  /** As if the signal had always had this value. */
  standAt(value: number): void {
    this.#average?.standAt(value);
    this.#taps?.standAt(value);
    this.#filtered = value;
  }

  step(value: number): number {
    const averaged = this.#average ? this.#average.step(value) : value;
    const shaped = this.#taps ? this.#taps.step(averaged) : averaged;
    if (this.#approach === null) return shaped;
    this.#filtered += this.#approach * (shaped - this.#filtered);
    return this.#filtered;
  }
}
