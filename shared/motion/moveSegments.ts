import { type MoveLimits, Profile } from './profile.ts';
import type { Segment } from './segment.ts';
import { type SegmentCommand, standAt } from './setpoint.ts';

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

  sample(_t: number, out: SegmentCommand): void {
    standAt(this.end, out);
  }

  corners(): readonly number[] {
    return [0, this.duration];
  }
}

/** A jerk-limited move between two positions. */
export class Move implements Segment {
  readonly moving = true;
  readonly swingsOn = false;
  end = 0;
  readonly #profile = new Profile();
  #from = 0;
  #cutting = 0;

  get duration(): number {
    return this.#profile.duration;
  }

  plan(from: number, to: number, limits: MoveLimits, speed: number, cutting = 0): this {
    this.#profile.plan(to - from, speed, limits.acceleration, limits.jerk);
    this.#from = from;
    this.#cutting = cutting;
    this.end = to;
    return this;
  }

  sample(t: number, out: SegmentCommand): void {
    this.#profile.sample(t, out);
    // from + (to − from) may miss `to` by a rounding.
    out.cutting = this.#cutting;
    out.position = t < this.duration ? this.#from + out.position : this.end;
  }

  corners(): readonly number[] {
    return this.#profile.corners();
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

  sample(_t: number, out: SegmentCommand): void {
    standAt(this.end, out);
  }

  corners(): readonly number[] {
    return [0];
  }
}
