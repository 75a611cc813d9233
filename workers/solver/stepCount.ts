import { breakawayForce, slidingFriction } from '../../shared/axis/guide.ts';
import { wornParameters } from '../../shared/axis/wear.ts';
import { at } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { eigenvalues } from '../math/eigenvalues.ts';
import { jacobian } from '../math/jacobian.ts';
import { Matrix } from '../math/matrix.ts';
import { bristleRateCap } from '../model/friction/bristles.ts';
import type { Plant } from '../model/plant.ts';
import { baseAt, CURRENTS, modesAt, V1, V2, X1, X2, Z } from '../model/state.ts';

/*
 * How many equal Runge-Kutta steps a period takes, from the eigenvalues μ of the plant's own derivative at the states where it is
 * stiffest:
 *
 *   h |μ| ≤ 2          the rule is stable up to 2.78 on the real axis, and what decays so fast needs no more
 *   h |Im μ| ≤ 0.7     a swing is then off in frequency by (h Im μ)⁴/120 = 2e-3, in damping ratio by (h Im μ)⁵/144 = 1.2e-3;
 *                      where one is excited so much that this counts, the energy account shows it
 *
 * Source of the bounds: exp(z) against 1 + z + z²/2 + z³/6 + z⁴/24.
 */
const MAX_DECAY = 2;
const MAX_SWING = 0.7;

/** Sliding speeds that are looked at besides the highest, m/s: bristles relax the faster, the faster the guide slides. */
const SPEEDS = [0, 1e-3, 1e-2];
/** Where bristles would relax at so many times their cap, they relax at 0.95 of it, and no faster at any speed. */
const CAPPED = 3;
/** How far beyond the end of the travel, m: there a screw is shortest, and the buffer is pressed. */
const BEYOND = 4e-3;
/** By how much a lost motion is closed, and the steps of the differences: m, m/s, A. */
const CLOSED = 1e-6;
const POSITION_STEP = 1e-8;
const BRISTLE_STEP = 1e-10;
const SPEED_STEP = 1e-6;
const CURRENT_STEP = 1e-3;

/** @returns how many steps a period of `span` seconds takes, 1 or more */
export function stepCount(plant: Plant, p: Parameters, span: number): number {
  let needed = 1;
  for (const speed of [...SPEEDS, highestSpeed(p)]) {
    const { re, im } = eigenvalues(slopes(plant, p, speed));
    for (const [k, real] of re.entries()) {
      const swing = Math.abs(at(im, k));
      const rate = Math.max(Math.hypot(real, swing) / MAX_DECAY, swing / MAX_SWING);
      needed = Math.max(needed, span * rate);
    }
  }
  return Math.ceil(needed);
}

/** The speed limit, which trips a drive; without one an axis may fall or be pulled faster, and bristles relax up to their cap. m/s */
function highestSpeed(p: Parameters): number {
  if (p.drive === 'on') return p.speedLimit;
  const friction = Math.max(slidingFriction(p), breakawayForce(p));
  const capped = (CAPPED * bristleRateCap(p.bristleStiffness) * friction) / p.bristleStiffness;
  return Math.max(p.speedLimit, capped);
}

/** ∂f/∂y of the plant at a speed, m/s, without the energies, which nothing depends on. */
function slopes(plant: Plant, p: Parameters, speed: number): Matrix {
  const y = plant.initialState(p.travelMin - BEYOND);
  y[X1] += wornParameters(p).backlash / 2 + CLOSED;
  y[V1] = speed;
  y[V2] = speed;
  for (let k = modesAt(plant.motors, p.base); k < plant.size; k += 2) y[k + 1] = speed;

  const steps = new Array<number>(plant.size).fill(0);
  steps[X1] = POSITION_STEP;
  steps[V1] = SPEED_STEP;
  steps[X2] = POSITION_STEP;
  steps[V2] = SPEED_STEP;
  steps[Z] = BRISTLE_STEP;
  steps.fill(CURRENT_STEP, CURRENTS, baseAt(plant.motors));
  for (let k = baseAt(plant.motors); k < plant.size; k += 2) {
    steps[k] = POSITION_STEP;
    steps[k + 1] = SPEED_STEP;
  }
  const all = jacobian((x, out) => plant.listDerivative(0, x, out), [...y], steps);
  const states = [...steps.keys()].filter((k) => at(steps, k) > 0);
  return Matrix.of(states.map((row) => states.map((column) => all.get(row, column))));
}
