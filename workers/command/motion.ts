import { Profile } from '../../shared/motion/profile.ts';
import { standAt } from '../../shared/motion/setpoint.ts';
import type { Segment } from './segment.ts';
import type { ProgramOutput } from './setpoint.ts';

/** Limits of a move: m/s, m/s², m/s³. */
export interface MoveLimits {
  readonly speed: number;
  readonly acceleration: number;
  readonly jerk: number;
}

/** Standing still. */
export class Dwell implements Segment {
  duration = 0;
  readonly moving = false;
  readonly swingsOn = false;
  end = 0;

  plan(position: number, duration: number): this {
    this.end = position;
    this.duration = duration;
    return this;
  }

  sample(_t: number, out: ProgramOutput): void {
    standAt(this.end, out);
  }
}

/** A jerk-limited move between two positions. */
export class Move implements Segment {
  readonly moving = true;
  readonly swingsOn = false;
  end = 0;
  readonly #profile = new Profile();
  #from = 0;

  get duration(): number {
    return this.#profile.duration;
  }

  plan(from: number, to: number, limits: MoveLimits, speed: number): this {
    this.#profile.plan(to - from, speed, limits.acceleration, limits.jerk);
    this.#from = from;
    this.end = to;
    return this;
  }

  sample(t: number, out: ProgramOutput): void {
    this.#profile.sample(t, out);
    // from + (to − from) may miss `to` by a rounding.
    out.position = t < this.duration ? this.#from + out.position : this.end;
  }
}

/** An unprofiled jump of the setpoint: it takes no time. */
export class Step implements Segment {
  readonly duration = 0;
  readonly moving = true;
  readonly swingsOn = false;
  end = 0;

  plan(to: number): this {
    this.end = to;
    return this;
  }

  sample(_t: number, out: ProgramOutput): void {
    standAt(this.end, out);
  }
}
