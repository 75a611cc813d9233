/** Forces added at the loop output while the setpoint stands still. */

import type { Segment } from './segment.ts';
import { type SegmentCommand, standAt } from './setpoint.ts';

/** A constant force. */
export class Pulse implements Segment {
  duration = 0;
  readonly moving = false;
  readonly swingsOn = false;
  end = 0;
  #force = 0;

  plan(position: number, force: number, duration: number): this {
    this.end = position;
    this.#force = force;
    this.duration = duration;
    return this;
  }

  sample(_t: number, out: SegmentCommand): void {
    standAt(this.end, out);
    out.force = this.#force;
  }

  corners(): readonly number[] {
    return [0, this.duration];
  }
}

/** Whole periods of one frequency. */
export class Tone implements Segment {
  duration = 0;
  readonly moving = false;
  swingsOn = false;
  end = 0;
  #force = 0;
  #frequency = 0;

  plan(position: number, force: number, frequency: number, periods: number, swingsOn: boolean): this {
    this.end = position;
    this.#force = force;
    this.#frequency = frequency;
    this.duration = periods / frequency;
    this.swingsOn = swingsOn;
    return this;
  }

  sample(t: number, out: SegmentCommand): void {
    standAt(this.end, out);
    swing(this.#force, this.#frequency, 2 * Math.PI * this.#frequency * t, out);
  }

  corners(): readonly number[] {
    return [0, this.duration];
  }
}

/**
 * A sweep with constant time per octave:
 *
 *     f(t) = f1 exp(kt),   φ(t) = 2π ∫f dt = 2π f1 (exp(kt) − 1)/k,   k = ln(f2/f1)/T
 *
 * T is rounded so that a whole number of periods fits: the force begins and ends at zero, and f2 is still met exactly.
 * Source: A. Farina, Simultaneous measurement of impulse response and distortion with a swept-sine technique,
 * 108th AES Convention, Paris 2000.
 */
export class Sweep implements Segment {
  duration = 0;
  readonly moving = false;
  readonly swingsOn = false;
  end = 0;
  #force = 0;
  #from = 0;
  #rate = 0;

  plan(position: number, force: number, from: number, to: number, duration: number): this {
    const span = Math.log1p((to - from) / from);
    const meanFrequency = span === 0 ? from : (to - from) / span;
    this.end = position;
    this.#force = force;
    this.#from = from;
    this.duration = Math.max(1, Math.round(duration * meanFrequency)) / meanFrequency;
    this.#rate = span / this.duration;
    return this;
  }

  sample(t: number, out: SegmentCommand): void {
    const k = this.#rate;
    const effectiveTime = k === 0 ? t : Math.expm1(k * t) / k;
    standAt(this.end, out);
    swing(this.#force, this.#from * Math.exp(k * t), 2 * Math.PI * this.#from * effectiveTime, out);
  }

  corners(): readonly number[] {
    return [0, this.duration];
  }
}

function swing(force: number, frequency: number, phase: number, out: SegmentCommand): void {
  out.frequency = frequency;
  out.phase = phase;
  out.force = force * Math.sin(phase);
}
