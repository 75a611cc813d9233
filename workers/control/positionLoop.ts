import { motorConstants } from '../../shared/axis/motor.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { SegmentCommand } from '../../shared/motion/setpoint.ts';
import { Biquad } from './biquad.ts';

/** What a program commands of the loop at one sample: m, m/s, m/s², and the force added at its output, N. */
type LoopCommand = Readonly<Pick<SegmentCommand, 'position' | 'speed' | 'acceleration' | 'force'>>;

/*
 * Parallel PID on the encoder reading, once per position-loop sample Tp:
 *
 *   e  = x_set − x_m
 *   v̂ += Tp/(T_f + Tp) ((x_m − x_m,before)/Tp − v̂)
 *   I += Ki Tp e
 *   F  = Kp e + I + Kd (v_set − v̂) + K_vff v_set + K_aff a_set + F_bias
 *   i_q* = (lowpass(notch2(notch1(F))) + F_program)/K_f,pk, limited
 *
 * m, N, A. While the current is limited, I does not move further in the limited direction.
 */
export class PositionLoop {
  /** Results of the last `step`: m, m/s, A, and whether the current is limited. */
  error = 0;
  speedEstimate = 0;
  currentCommand = 0;
  limited = false;

  readonly #notch1 = new Biquad();
  readonly #notch2 = new Biquad();
  readonly #lowpass = new Biquad();
  #integral = 0;
  #lastReading = Number.NaN;
  #perForce = 0;
  #period = 1;
  #speedFilter = 1;

  configure(p: Parameters): void {
    const rate = p.currentRate / p.positionDivider;
    this.#period = 1 / rate;
    this.#speedFilter = this.#period / (p.derivativeTime + this.#period);
    this.#perForce = 1 / motorConstants(p).forcePerAmp;
    if (p.notch1) this.#notch1.setNotch(p.notch1Frequency, p.notch1Width, p.notch1Depth, rate);
    else this.#notch1.setThrough();
    if (p.notch2) this.#notch2.setNotch(p.notch2Frequency, p.notch2Width, p.notch2Depth, rate);
    else this.#notch2.setThrough();
    if (p.lowpass) this.#lowpass.setLowpass(p.lowpassFrequency, p.lowpassDamping, rate);
    else this.#lowpass.setThrough();
  }

  /** Starts afresh: integrator empty, filters empty, speed estimate zero. */
  reset(): void {
    this.#integral = 0;
    this.speedEstimate = 0;
    this.currentCommand = 0;
    this.limited = false;
    this.#lastReading = Number.NaN;
    this.#notch1.reset();
    this.#notch2.reset();
    this.#lowpass.reset();
  }

  /** One sample. The encoder reading in m, the limit of the current amplitude in A. */
  step(p: Parameters, command: LoopCommand, reading: number, limit: number): void {
    const { speed, acceleration } = command;
    this.observe(command.position, reading);
    const integralBefore = this.#integral;
    this.#integral += p.Ki * this.#period * this.error;
    const force =
      p.Kp * this.error +
      this.#integral +
      p.Kd * (speed - this.speedEstimate) +
      p.speedFeedforward * speed +
      p.accelerationFeedforward * acceleration +
      p.forceBias;
    const shaped = this.#lowpass.step(this.#notch2.step(this.#notch1.step(force))) + command.force;
    const wanted = shaped * this.#perForce;
    this.currentCommand = Math.min(Math.max(wanted, -limit), limit);
    this.limited = this.currentCommand !== wanted;
    if (this.limited && this.error * wanted > 0) this.#integral = integralBefore;
  }

  /** Follows the encoder without driving: error and speed estimate stay right while the drive is off. */
  observe(position: number, reading: number): void {
    if (Number.isNaN(this.#lastReading)) this.#lastReading = reading;
    this.speedEstimate +=
      this.#speedFilter * ((reading - this.#lastReading) / this.#period - this.speedEstimate);
    this.#lastReading = reading;
    this.error = position - reading;
  }
}
