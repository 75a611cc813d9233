/**
 * Jerk-limited move from rest to rest, as fast as the limits on speed V, acceleration A and jerk J allow.
 *
 *     jerk  +J | 0 | −J | 0 | −J | 0 | +J      for the times  t_j, t_a, t_j, t_v, t_j, t_a, t_j
 *
 *     peak speed  v = J t_j (t_j + t_a)
 *     ramp        t_r = 2 t_j + t_a,  over the distance v t_r / 2
 *     distance    D = v (t_r + t_v)
 *
 * The second half is the first one run backwards from the end: x(t) = D − x(T − t). So only one ramp is computed, and
 * the end is met exactly.
 *
 * Source: L. Biagiotti, C. Melchiorri, Trajectory Planning for Automatic Machines and Robots, Springer 2008, sec. 3.4
 * (double S trajectory with zero end speeds).
 */
import { type Setpoint, standAt } from './setpoint.ts';

/** Limits of a move: m/s, m/s², m/s³. */
export interface MoveLimits {
  readonly speed: number;
  readonly acceleration: number;
  readonly jerk: number;
}

export class Profile {
  /** Time of the whole move T, s. */
  duration = 0;

  #distance = 0;
  #direction = 1;
  #jerk = 0;
  #jerkTime = 0;
  #accelerationTime = 0;
  #rampTime = 0;
  #speed = 0;

  /**
   * Plans a move over `distance` (m, either sign) under limits in m/s, m/s², m/s³.
   * @throws RangeError if a limit is not a positive number or the distance is not a number.
   */
  plan(distance: number, speed: number, acceleration: number, jerk: number): void {
    if (!Number.isFinite(distance)) throw new RangeError(`distance must be a finite number, got ${distance}`);
    mustBePositive('speed', speed);
    mustBePositive('acceleration', acceleration);
    mustBePositive('jerk', jerk);

    const D = Math.abs(distance);
    const fullJerkTime = acceleration / jerk;
    const reachesAcceleration = speed > acceleration * fullJerkTime;

    // The ramp to full speed; if there is no room for two of them, the ramp that the distance leaves room for.
    let jerkTime = reachesAcceleration ? fullJerkTime : Math.sqrt(speed / jerk);
    let accelerationTime = reachesAcceleration ? speed / acceleration - fullJerkTime : 0;
    let cruiseTime = D / speed - (2 * jerkTime + accelerationTime);
    if (cruiseTime < 0) {
      cruiseTime = 0;
      const spare = D / acceleration - 2 * fullJerkTime * fullJerkTime;
      if (spare > 0) {
        // A (t_j + t_a)(2 t_j + t_a) = D, in the form of the root that does not cancel.
        const root = Math.sqrt(fullJerkTime * fullJerkTime + (4 * D) / acceleration);
        jerkTime = fullJerkTime;
        accelerationTime = (2 * spare) / (3 * fullJerkTime + root);
      } else {
        jerkTime = Math.cbrt(D / (2 * jerk));
        accelerationTime = 0;
      }
    }

    this.#distance = D;
    this.#direction = distance < 0 ? -1 : 1;
    this.#jerkTime = jerkTime;
    this.#accelerationTime = accelerationTime;
    this.#rampTime = 2 * jerkTime + accelerationTime;
    this.duration = 2 * this.#rampTime + cruiseTime;
    // Speed and jerk that cover the distance in the times as rounded: the limits, but for the last digits.
    this.#speed = D > 0 ? D / (this.#rampTime + cruiseTime) : 0;
    this.#jerk = D > 0 ? this.#speed / (jerkTime + accelerationTime) / jerkTime : 0;
  }

  /** When the jerk changes, start and end included, s, ascending; stretches that the move does not have are of no length. */
  corners(): number[] {
    const [tj, tr, T] = [this.#jerkTime, this.#rampTime, this.duration];
    return [0, tj, tr - tj, tr, T - tr, T - tr + tj, T - tj, T];
  }

  /** The setpoint `t` seconds after the start, relative to where the move starts. */
  sample(t: number, out: Setpoint): void {
    if (!(t > 0)) {
      standAt(0, out);
      if (t === 0) out.jerk = this.#direction * this.#jerk;
    } else if (t >= this.duration) {
      standAt(this.#direction * this.#distance, out);
    } else {
      const back = this.duration - t;
      const firstHalf = t <= back;
      this.#sampleRamp(firstHalf ? t : back, out);
      if (!firstHalf) {
        out.position = this.#distance - out.position;
        out.acceleration = -out.acceleration;
      }
      out.position *= this.#direction;
      out.speed *= this.#direction;
      out.acceleration *= this.#direction;
      out.jerk *= this.#direction;
    }
  }

  /** From the start to the middle of the move, in the positive direction. */
  #sampleRamp(t: number, out: Setpoint): void {
    const J = this.#jerk;
    const tj = this.#jerkTime;
    const left = this.#rampTime - t;
    if (t < tj) {
      out.position = (J * t * t * t) / 6;
      out.speed = (J * t * t) / 2;
      out.acceleration = J * t;
      out.jerk = J;
    } else if (t < tj + this.#accelerationTime) {
      const since = t - tj;
      const A = J * tj;
      out.position = A * ((tj * tj) / 6 + (tj * since) / 2 + (since * since) / 2);
      out.speed = A * (tj / 2 + since);
      out.acceleration = A;
      out.jerk = 0;
    } else if (left > 0) {
      out.position = this.#speed * (this.#rampTime / 2 - left) + (J * left * left * left) / 6;
      out.speed = this.#speed - (J * left * left) / 2;
      out.acceleration = J * left;
      out.jerk = -J;
    } else {
      out.position = this.#speed * (this.#rampTime / 2 - left);
      out.speed = this.#speed;
      out.acceleration = 0;
      out.jerk = 0;
    }
  }
}

/** How long a move over a distance (m, either sign) takes under limits in m/s, m/s², m/s³. */
export function moveTime(distance: number, { speed, acceleration, jerk }: MoveLimits): number {
  const profile = new Profile();
  profile.plan(distance, speed, acceleration, jerk);
  return profile.duration;
}

function mustBePositive(name: string, value: number): void {
  if (!(value > 0 && value < Infinity)) {
    throw new RangeError(`${name} must be a positive finite number, got ${value}`);
  }
}
