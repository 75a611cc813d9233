import { MathUtils, Spherical, Vector3 } from 'three';

/** How long the camera takes from one view to another, ms. */
const DURATION = 700;

/** Where a camera stands, and what it looks at. */
export interface Pose {
  readonly position: Vector3;
  readonly target: Vector3;
}

/** The way of a camera from one view to another: around what it looks at, the shorter way, gently at both ends. */
export class Flight {
  readonly #from: Pose;
  readonly #to: Pose;
  readonly #begin: number;
  readonly #start: Spherical;
  readonly #end: Spherical;
  readonly #turn: number;
  readonly #seen = new Spherical();

  /** `begin` in ms. */
  constructor(from: Pose, to: Pose, begin: number) {
    [this.#from, this.#to, this.#begin] = [from, to, begin];
    [this.#start, this.#end] = [from, to].map(({ position, target }) =>
      new Spherical().setFromVector3(new Vector3().subVectors(position, target)),
    ) as [Spherical, Spherical];
    const turn = this.#end.theta - this.#start.theta;
    this.#turn = Math.atan2(Math.sin(turn), Math.cos(turn));
  }

  /** Puts the camera where it is at a time, ms. Returns whether it has arrived. */
  at(time: number, { position, target }: Pose): boolean {
    const share = MathUtils.clamp((time - this.#begin) / DURATION, 0, 1);
    if (share === 1) {
      position.copy(this.#to.position);
      target.copy(this.#to.target);
      return true;
    }
    const eased = MathUtils.smootherstep(share, 0, 1);
    const [start, end] = [this.#start, this.#end];
    this.#seen.set(
      start.radius * (end.radius / start.radius) ** eased,
      MathUtils.lerp(start.phi, end.phi, eased),
      start.theta + this.#turn * eased,
    );
    target.lerpVectors(this.#from.target, this.#to.target, eased);
    position.setFromSpherical(this.#seen).add(target);
    return false;
  }
}
