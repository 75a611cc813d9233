import { valueAt } from '../../../shared/core/at.ts';
import {
  loadSideMass,
  motorSideMass,
  movedMass,
  translatingMotorMass,
} from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { leastSquares } from '../../math/leastSquares.ts';
import { baseMotion } from './baseMotion.ts';
import { brakingOf } from './motorForce.ts';
import { rippleColumns } from './nuisance.ts';
import type { Sliding } from './sliding.ts';
import type { Windows } from './windows.ts';

/** Index of each coefficient that is wanted. */
export const MASS = 0;
export const BIAS = 1;
export const COULOMB = 2;
export const VISCOUS = 3;
const ESSENTIAL = 4;

/** Each coefficient needs this many windows, because they overlap. */
const WINDOWS_PER_COEFFICIENT = 4;

/** Share of noise in the acceleration above which it does not measure a mass. */
export const HOPELESS = 0.01;

/**
 * Number of iterations for the motion of a base, which depends on the wanted mass by a few percent
 * of it.
 */
const BASE_ROUNDS = 3;

/** Force from the current, N, and positions, m, on one time grid. */
export interface MotionRecord {
  readonly force: Float64Array;
  readonly position: Float64Array;
  readonly motorPosition: Float64Array;
  readonly period: number;
  readonly start: number;
}

/*
 * The force record as a function of the motion, over windows in which the table slides:
 *
 *   F = M a + F_0 + F_c sgn v + d v                    wanted
 *       + δ F' + (m1 m2/k) a'' + ripple + cogging      nuisance terms: skew between the records,
 *                                                      compliance of the link; see nuisance.ts
 *
 * linear in the coefficients, so least squares needs no initial values and has no local minima. On
 * the right is the motion, whose noise is negligible in windows of this length (`sliding.ts`
 * ensures it); on the left the force, whose noise does no harm. Source: Gautier, Khalil, Exciting trajectories
 * for the identification of base inertial parameters of robots, Int. J. Robotics Research 11(4),
 * 1992 (inverse dynamic model); window averages see windows.ts.
 *
 * On a base that moves, a is relative to the floor; the rotation of a screw is relative to the base.
 */
/** The equation for one motion of the base. */
interface MotionSystem {
  /** Over all windows: what is fitted, and the force that is known beforehand, N. */
  readonly columns: readonly Float64Array[];
  readonly given: Float64Array;
  /** The same over the fitted windows: columns, and the right-hand side, N. */
  readonly design: readonly Float64Array[];
  readonly right: Float64Array;
  /** Window averages of the acceleration of the base. */
  readonly base: Float64Array;
}

export class MotionEquation {
  readonly #measured: Float64Array;
  readonly #used: Uint8Array;
  readonly #maxColumns: number;
  /** A mass that the motion does not show is taken from the parameters, kg. */
  readonly #knownMass: number;
  readonly #hasMass: boolean;
  /** Equivalent mass of what rotates: it accelerates relative to the base, kg. */
  readonly #rotating: number;
  readonly #acceleration: Float64Array;
  readonly #braking: Float64Array;
  /** Columns of the essential coefficients after the mass, and of the nuisance terms. */
  readonly #essential: readonly Float64Array[];
  readonly #others: readonly Float64Array[];

  constructor(
    { force, position, motorPosition }: MotionRecord,
    { windows, speed, snapNoise }: Sliding,
    measured: Float64Array,
    used: Uint8Array,
    hasMass: boolean,
    p: Parameters,
  ) {
    const count = used.reduce((sum, one) => sum + one, 0);
    this.#measured = measured;
    this.#used = used;
    this.#maxColumns = Math.max(ESSENTIAL, Math.floor(count / WINDOWS_PER_COEFFICIENT));
    this.#knownMass = hasMass ? 0 : movedMass(p);
    this.#hasMass = hasMass;
    this.#rotating = motorSideMass(p) - translatingMotorMass(p);
    this.#acceleration = windows.average(position, 2);
    this.#braking = speed.map((v) => brakingOf(v, p));
    this.#essential = [new Float64Array(windows.count).fill(1), Float64Array.from(speed, Math.sign), speed];
    this.#others = [
      ...(hasMass ? [windows.average(force, 1)] : []),
      ...(snapNoise < HOPELESS ? [windows.average(position, 4)] : []),
      ...rippleColumns(windows, motorPosition, force, p),
    ];
  }

  onFixedBase(): MotionSystem {
    return this.over(new Float64Array(this.#acceleration.length), []);
  }

  /**
   * @param base window averages of the acceleration of the base
   * @param swings window averages of the accelerations of its free oscillations
   */
  over(base: Float64Array, swings: readonly Float64Array[]): MotionSystem {
    const inertial = this.#acceleration.map((a, k) => a + valueAt(base, k));
    const mass = this.#hasMass ? inertial : new Float64Array(inertial.length);
    const columns = [mass, ...this.#essential, ...swings, ...this.#others].slice(0, this.#maxColumns);
    const given = this.#braking.map(
      (f, k) => this.#knownMass * valueAt(inertial, k) - this.#rotating * valueAt(base, k) + f,
    );
    const fitted = (column: Float64Array) => column.filter((_, k) => this.#used[k] === 1);
    return {
      columns,
      given,
      design: columns.map(fitted),
      right: fitted(this.#measured.map((f, k) => f - valueAt(given, k))),
      base,
    };
  }
}

/**
 * Iterates: the motion of the base follows from the mass, and the mass from the motion of the base.
 */
export function onMovingBase(
  equation: MotionEquation,
  { position, period }: MotionRecord,
  windows: Windows,
  hasMass: boolean,
  p: Parameters,
): MotionSystem {
  const rotating = motorSideMass(p) - translatingMotorMass(p);
  let system = equation.onFixedBase();
  for (let round = 0; round < BASE_ROUNDS; round++) {
    const mass = hasMass
      ? valueAt(leastSquares(system.design, system.right).x, MASS) - rotating
      : translatingMotorMass(p) + loadSideMass(p);
    const { position: base, swings } = baseMotion(position, period, mass, p);
    system = equation.over(
      windows.average(base, 2),
      swings.map((swing) => windows.average(swing, 2)),
    );
  }
  return system;
}
