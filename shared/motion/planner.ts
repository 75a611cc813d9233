import type { MoveLine } from '../core/scene.ts';
import { Pulse, Sweep, Tone } from './injection.ts';
import { Dwell, Move, Step } from './moveSegments.ts';
import type { MoveLimits } from './profile.ts';
import type { Segment } from './segment.ts';
import { SinePeriod } from './sinePeriod.ts';

/**
 * What a program plans its next segment with: where the setpoint stands, where the present cycle began, and one object
 * of each kind of segment, so that a running axis allocates nothing.
 */
export class Planner {
  /** Where the last segment ended, and where the present cycle began, m. */
  position = 0;
  home = 0;

  readonly #dwell = new Dwell();
  readonly #move = new Move();
  readonly #step = new Step();
  readonly #sinePeriod = new SinePeriod();
  readonly #pulse = new Pulse();
  readonly #tone = new Tone();
  readonly #sweep = new Sweep();

  constructor(readonly moves: readonly MoveLine[]) {}

  reset(position: number): void {
    this.position = position;
    this.home = position;
    this.#sinePeriod.reset();
  }

  isDwell(segment: Segment): boolean {
    return segment === this.#dwell;
  }

  dwell(duration: number): Segment {
    return this.#dwell.plan(this.position, duration);
  }

  /** @param cutting force of the process against this move, N */
  moveTo(to: number, limits: MoveLimits, speed = limits.speed, cutting = 0): Segment {
    return this.#move.plan(this.position, to, limits, speed, cutting);
  }

  stepTo(to: number): Segment {
    return this.#step.plan(to);
  }

  sinePeriod(frequency: number, amplitude: number): Segment {
    return this.#sinePeriod.plan(this.home, frequency, amplitude);
  }

  pulse(force: number, duration: number): Segment {
    return this.#pulse.plan(this.position, force, duration);
  }

  tone(force: number, frequency: number, periods: number, swingsOn: boolean): Segment {
    return this.#tone.plan(this.position, force, frequency, periods, swingsOn);
  }

  sweep(force: number, from: number, to: number, duration: number): Segment {
    return this.#sweep.plan(this.position, force, from, to, duration);
  }
}
