/**
 * One period of a sine motion whose amplitude may change on the way:
 *
 *     x(t) = c + a(t) sin ωt,   a(t) = a0 + (a1 − a0) w(t/T),   w(u) = 10u³ − 15u⁴ + 6u⁵
 *
 * The window w has zero first and second derivative at both ends, so that position, speed, acceleration and jerk run on
 * without a step from standstill to the full sine, from one amplitude to the next, and back to standstill.
 */
import type { Segment } from './segment.ts';
import type { SegmentCommand } from './setpoint.ts';

/** Pieces of a period in each of which the motion is near enough a parabola of the acceleration. */
const PIECES = 16;

export class SinePeriod implements Segment {
  readonly moving = true;
  duration = 0;
  end = 0;
  #frequency = 0;
  #from = 0;
  #to = 0;

  get swingsOn(): boolean {
    return this.#to !== 0;
  }

  /** The next period begins from standstill. */
  reset(): void {
    this.#to = 0;
  }

  /**
   * Plans the period that follows the last one and grows or shrinks to `amplitude`. A swinging axis keeps its centre, and
   * it cannot change its frequency smoothly: for that it is brought to rest first.
   */
  plan(centre: number, frequency: number, amplitude: number): this {
    this.#from = this.#to;
    if (this.#from === 0) {
      this.end = centre;
      this.#frequency = frequency;
      this.duration = 1 / frequency;
    }
    this.#to = frequency === this.#frequency ? amplitude : 0;
    return this;
  }

  sample(t: number, out: SegmentCommand): void {
    const T = this.duration;
    const w = 2 * Math.PI * this.#frequency;
    const change = this.#to - this.#from;
    const u = t / T;
    const a = this.#from + change * u * u * u * (10 + u * (6 * u - 15));
    const a1 = (change * 30 * u * u * (1 - u) * (1 - u)) / T;
    const a2 = (change * 60 * u * (1 - u) * (1 - 2 * u)) / T ** 2;
    const a3 = (change * 60 * (1 - 6 * u * (1 - u))) / T ** 3;
    const s = Math.sin(w * t);
    const c = Math.cos(w * t);
    out.position = this.end + a * s;
    out.speed = a1 * s + a * w * c;
    out.acceleration = (a2 - a * w * w) * s + 2 * a1 * w * c;
    out.jerk = (a3 - 3 * a1 * w * w) * s + (3 * a2 - a * w * w) * w * c;
  }

  corners(): readonly number[] {
    return Array.from({ length: PIECES + 1 }, (_, k) => (k / PIECES) * this.duration);
  }
}
