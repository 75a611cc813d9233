import { compensatesFriction, FrictionCompensation } from '../../shared/axis/frictionCompensation.ts';
import { designFilter } from '../../shared/axis/loop/filterSections.ts';
import { motorConstants } from '../../shared/axis/motor.ts';
import type { CoggingTable } from '../../shared/core/coggingTable.ts';
import type { FilterNumber } from '../../shared/core/parameters/filters.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { SegmentCommand } from '../../shared/motion/setpoint.ts';
import { Biquad } from './biquad.ts';
import { CoggingCompensation } from './coggingCompensation.ts';
import { DelayLine } from './delayLine.ts';
import { DisturbanceObserver } from './disturbanceObserver.ts';
import { Cascade } from './feedback/cascade.ts';
import type { Feedback } from './feedback/feedback.ts';
import { Pid } from './feedback/pid.ts';

/** What a program commands of the loop at one sample: m, m/s, m/s², and the force added at its output, N. */
type LoopCommand = Readonly<Pick<SegmentCommand, 'position' | 'speed' | 'acceleration' | 'force'>>;

/*
 * The position loop, once per sample Tp, with the encoder reading x_m and the reading x_s that the speed is measured from:
 *
 *   e  = x_set − x_m
 *   v̂ += Tp/(T_f + Tp) ((x_s − x_s,before)/Tp − v̂)
 *   F  = feedback(e, v_set one T_sd ago, v̂) + K_vff v_set + K_aff a_set + F_fc(v_set) + F_ct(x) + F_bias + d̂
 *   i_q* = (filter4(filter3(filter2(filter1(F)))) + F_program)/K_f,pk, limited
 *
 * m, N, A. The feedback is that of the structure chosen; F_fc is the friction compensation, F_ct the learned table of cogging, d̂ the load force by
 * the observer. While the current is limited, the
 * integrator does not move further in the limited direction.
 */
export class PositionLoop {
  /** Results of the last `step`: m, m/s, A, and whether the current is limited. */
  error = 0;
  speedEstimate = 0;
  currentCommand = 0;
  limited = false;

  readonly #structures: Readonly<Record<Parameters['controller'], Feedback>> = {
    PID: new Pid(),
    cascade: new Cascade(),
  };
  readonly #setSpeed = new DelayLine();
  readonly #observer = new DisturbanceObserver();
  readonly #filter1 = new Biquad();
  readonly #filter2 = new Biquad();
  readonly #filter3 = new Biquad();
  readonly #filter4 = new Biquad();
  #feedback: Feedback = this.#structures.PID;
  #lastReading = Number.NaN;
  /** Of the last sample, N. */
  #feedbackForce = 0;
  /** Force of the loop at the last sample as far as the limit let it through, N, and the part of it that carries what is known. */
  #forceBefore = 0;
  #knownBefore = 0;
  #forcePerAmp = 1;
  #perForce = 0;
  #period = 1;
  #speedFilter = 1;
  #speedFeedforward = 0;
  #accelerationFeedforward = 0;
  #forceBias = 0;
  /** Null without one. */
  #friction: FrictionCompensation | null = null;
  #coggingBy: 'nothing' | Parameters['coggingPosition'] = 'nothing';
  readonly #cogging: CoggingCompensation;

  constructor(table?: CoggingTable) {
    this.#cogging = new CoggingCompensation(table);
  }

  configure(p: Parameters): void {
    const rate = p.currentRate / p.positionDivider;
    this.#period = 1 / rate;
    this.#speedFilter = this.#period / (p.derivativeTime + this.#period);
    this.#forcePerAmp = motorConstants(p).forcePerAmp;
    this.#perForce = 1 / this.#forcePerAmp;
    this.#speedFeedforward = p.speedFeedforward;
    this.#accelerationFeedforward = p.accelerationFeedforward;
    this.#forceBias = p.forceBias;
    this.#friction = compensatesFriction(p) ? new FrictionCompensation(p) : null;
    this.#coggingBy = p.coggingCompensation ? p.coggingPosition : 'nothing';
    const feedback = this.#structures[p.controller];
    if (feedback !== this.#feedback) feedback.start(this.#feedbackForce);
    feedback.configure(p, this.#period);
    this.#feedback = feedback;
    this.#setSpeed.configure(p.setSpeedDelay, this.#period);
    this.#observer.configure(p, this.#period);
    setFilter(this.#filter1, p, 1, rate);
    setFilter(this.#filter2, p, 2, rate);
    setFilter(this.#filter3, p, 3, rate);
    setFilter(this.#filter4, p, 4, rate);
  }

  /** Starts afresh: integrator, observer and filters empty, speed estimate zero. */
  reset(): void {
    this.#feedback.start(0);
    this.#feedbackForce = 0;
    this.#setSpeed.fill(0);
    this.#observer.reset();
    this.#forceBefore = 0;
    this.#knownBefore = 0;
    this.speedEstimate = 0;
    this.currentCommand = 0;
    this.limited = false;
    this.#lastReading = Number.NaN;
    this.#filter1.reset();
    this.#filter2.reset();
    this.#filter3.reset();
    this.#filter4.reset();
  }

  /**
   * One sample.
   *
   * @param reading of the position encoder, m
   * @param speedReading of the encoder that the speed is measured from, m
   * @param limit of the current amplitude, A
   */
  step(command: LoopCommand, reading: number, speedReading: number, limit: number): void {
    const { speed, acceleration } = command;
    this.observe(command.position, reading, speedReading);
    this.#feedbackForce = this.#feedback.step(this.error, this.#setSpeed.step(speed), this.speedEstimate);
    const drag = this.#speedFeedforward * speed;
    const friction = this.#friction ? this.#friction.force(speed) : 0;
    const cogging = this.#coggingForce(command.position, reading);
    const force =
      this.#feedbackForce +
      drag +
      this.#accelerationFeedforward * acceleration +
      friction +
      cogging +
      this.#forceBias +
      this.#observer.step(this.#forceBefore - this.#knownBefore, this.speedEstimate);
    const half = this.#filter2.step(this.#filter1.step(force));
    const shaped = this.#filter4.step(this.#filter3.step(half)) + command.force;
    const wanted = shaped * this.#perForce;
    this.currentCommand = Math.min(Math.max(wanted, -limit), limit);
    this.limited = this.currentCommand !== wanted;
    if (this.limited) this.#feedback.holdIntegral(wanted);
    this.#forceBefore = this.currentCommand * this.#forcePerAmp - command.force;
    this.#knownBefore = drag + friction + cogging + this.#forceBias;
  }

  #coggingForce(set: number, measured: number): number {
    if (this.#coggingBy === 'nothing') return 0;
    return this.#cogging.force(this.#coggingBy === 'set' ? set : measured);
  }

  /** Follows the encoders without driving: error and speed estimate stay right while the drive is off. */
  observe(position: number, reading: number, speedReading: number): void {
    if (Number.isNaN(this.#lastReading)) this.#lastReading = speedReading;
    this.speedEstimate +=
      this.#speedFilter * ((speedReading - this.#lastReading) / this.#period - this.speedEstimate);
    this.#lastReading = speedReading;
    this.error = position - reading;
  }
}

function setFilter(filter: Biquad, p: Parameters, n: FilterNumber, rate: number): void {
  designFilter(filter, p, n, rate);
  filter.isOff = p[`filter${n}`] === 'off';
}
