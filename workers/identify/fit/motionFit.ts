import { loadSideMass, motorSideMass, movedMass, translatingMotorMass } from '../../../shared/axis/motor.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { ForceResidual } from '../../../shared/protocol/fit.ts';
import { leastSquares } from '../../math/leastSquares.ts';
import { baseMotion } from './baseMotion.ts';
import { type Jackknife, jackknife, TWELVE_BLOCKS } from './jackknife.ts';
import { brakingOf } from './motorForce.ts';
import { rippleColumns } from './nuisance.ts';
import { type Sliding, slidingWindows } from './sliding.ts';

/** Where each coefficient stands. */
export const MASS = 0;
export const BIAS = 1;
export const COULOMB = 2;
export const VISCOUS = 3;
const ESSENTIAL = 4;

/** Windows overlap, so a coefficient needs several of them to stand on; and every block left out needs some. */
const WINDOWS_PER_COEFFICIENT = 4;
const FEWEST_WINDOWS = 3 * TWELVE_BLOCKS.count;

/** Share of noise in the acceleration at which it is no measure of a mass any more. */
const HOPELESS = 0.01;

/** The motion of a base hangs on the mass that is looked for, by a few percent of it: so often it is worked out anew. */
const BASE_ROUNDS = 3;

/** Force of the current and positions, on one grid of time. */
export interface MotionRecord {
  readonly force: Float64Array;
  readonly position: Float64Array;
  readonly motorPosition: Float64Array;
  readonly period: number;
  readonly start: number;
}

export interface MotionFit {
  readonly sliding: Sliding;
  readonly jackknife: Jackknife;
  readonly forces: ForceResidual;
  /** Window averages of the acceleration of the base; 0 where it stands fixed. */
  readonly baseAcceleration: Float64Array;
  /** What the motion tells apart. */
  readonly hasMass: boolean;
  readonly hasBothDirections: boolean;
  readonly hasSeveralSpeeds: boolean;
  /** Of the first window that was fitted, 1 or −1. */
  readonly direction: number;
}

/*
 * The force record explained by the motion, over windows in which the table slides:
 *
 *   F = M a + F_0 + F_c sgn v + d v                    what is wanted
 *       + δ F' + (m1 m2/k) a'' + ripple + cogging      what is there too: skew between the two records, give of the link, see nuisance.ts
 *
 * linear in the coefficients, so least squares has no starting values and no local minima. On the right the motion, whose noise is
 * negligible in windows of this length (`sliding.ts` sees to it); on the left the force, whose noise does no harm.
 * Source: Gautier, Khalil, Exciting trajectories for the identification of base inertial parameters of robots, Int. J. Robotics Research
 * 11(4), 1992 (inverse dynamic model); window averages see windows.ts.
 *
 * On a base that moves, a counts from the floor; a screw's rotation counts from the base.
 *
 * @returns what keeps it from being done, in plain words, where it cannot be
 */
export function fitMotion(record: MotionRecord, p: Parameters): MotionFit | string {
  const { force, position, motorPosition, period, start } = record;
  const sliding = slidingWindows(position, period, p, FEWEST_WINDOWS);
  const { windows, speed, direction } = sliding;
  const measured = windows.average(force);
  const used = direction.map((d, k) => (d !== 0 && !Number.isNaN(measured[k]!) ? 1 : 0));
  const count = used.reduce((sum, one) => sum + one, 0);
  const window = 2 * windows.half * period;
  if (count < FEWEST_WINDOWS) {
    return `The table slides clear of breakaway in ${count} windows of ${(1000 * window).toFixed(0)} ms only, and ${FEWEST_WINDOWS} are needed: record longer or faster moves.`;
  }

  const hasMass = sliding.accelerationNoise < HOPELESS;
  const acceleration = windows.average(position, 2);
  const braking = speed.map((v) => brakingOf(v, p));
  const rotating = motorSideMass(p) - translatingMotorMass(p);
  const others = [
    new Float64Array(windows.count).fill(1),
    Float64Array.from(speed, Math.sign),
    speed,
    ...(hasMass ? [windows.average(force, 1)] : []),
    ...(sliding.snapNoise < HOPELESS ? [windows.average(position, 4)] : []),
    ...rippleColumns(windows, motorPosition, force, p),
  ];
  const fitOver = (base: Float64Array, swings: readonly Float64Array[]) => {
    const inertial = acceleration.map((a, k) => a + base[k]!);
    const columns = [
      hasMass ? inertial : new Float64Array(windows.count),
      ...others.slice(0, ESSENTIAL - 1),
      ...swings,
      ...others.slice(ESSENTIAL - 1),
    ].slice(0, Math.max(ESSENTIAL, Math.floor(count / WINDOWS_PER_COEFFICIENT)));
    const known = hasMass ? 0 : movedMass(p);
    const given = braking.map((f, k) => known * inertial[k]! - rotating * base[k]! + f);
    const design = columns.map((column) => column.filter((_, k) => used[k] === 1));
    const right = measured.map((f, k) => f - given[k]!).filter((_, k) => used[k] === 1);
    return { columns, given, design, right, base };
  };

  let system = fitOver(new Float64Array(windows.count), []);
  for (let round = 0; p.base && round < BASE_ROUNDS; round++) {
    const mass = hasMass
      ? leastSquares(system.design, system.right).x[MASS]! - rotating
      : translatingMotorMass(p) + loadSideMass(p);
    const { position: base, swings } = baseMotion(position, period, mass, p);
    system = fitOver(
      windows.average(base, 2),
      swings.map((swing) => windows.average(swing, 2)),
    );
  }
  const { columns, given, design, right, base } = system;
  const fit = jackknife(design, right, windows.overlap);
  const model = given.map((f, k) => columns.reduce((sum, column, j) => sum + fit.x[j]! * column[k]!, f));
  return {
    sliding,
    jackknife: fit,
    forces: {
      window,
      time: Float64Array.from(model, (_, k) => start + windows.centre(k) * period),
      measured: measured as Float64Array<ArrayBuffer>,
      model: model as Float64Array<ArrayBuffer>,
      residual: measured.map((f, k) => f - model[k]!) as Float64Array<ArrayBuffer>,
      used: Uint8Array.from(used),
    },
    baseAcceleration: base,
    hasMass,
    hasBothDirections: !fit.dependent[COULOMB],
    hasSeveralSpeeds: !fit.dependent[VISCOUS],
    direction: direction[used.indexOf(1)]!,
  };
}
