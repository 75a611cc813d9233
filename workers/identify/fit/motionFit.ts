import { at, valueAt } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { ForceResidual } from '../../../shared/protocol/fit.ts';
import { type Jackknife, jackknife, TWELVE_BLOCKS } from './jackknife.ts';
import {
  COULOMB,
  HOPELESS,
  MotionEquation,
  type MotionRecord,
  onMovingBase,
  VISCOUS,
} from './motionEquation.ts';
import { type Sliding, slidingWindows } from './sliding.ts';

/** Smallest number of windows: every block of the jackknife needs some. */
const FEWEST_WINDOWS = 3 * TWELVE_BLOCKS.count;

export interface MotionFit {
  readonly sliding: Sliding;
  readonly jackknife: Jackknife;
  readonly forces: ForceResidual;
  /** Window averages of the acceleration of the base; 0 present position fixed. */
  readonly baseAcceleration: Float64Array;
  /** Which quantities the motion determines. */
  readonly hasMass: boolean;
  readonly hasBothDirections: boolean;
  readonly hasSeveralSpeeds: boolean;
  /** Direction of the first fitted window, 1 or −1. */
  readonly direction: number;
}

/**
 * Fits the equation of motionEquation.ts to a record.
 *
 * @returns a text that says why, where it cannot be done
 */
export function fitMotion(record: MotionRecord, p: Parameters): MotionFit | string {
  const sliding = slidingWindows(record.position, record.period, p, FEWEST_WINDOWS);
  const { windows, direction } = sliding;
  const measured = windows.average(record.force);
  const used = Uint8Array.from(direction, (d, k) => (d !== 0 && !Number.isNaN(valueAt(measured, k)) ? 1 : 0));
  const count = used.reduce((sum, one) => sum + one, 0);
  const window = 2 * windows.half * record.period;
  if (count < FEWEST_WINDOWS) {
    return `The table slides clear of breakaway in only ${count} windows of ${(1000 * window).toFixed(0)} ms, and ${FEWEST_WINDOWS} are needed: record longer or faster moves.`;
  }

  const hasMass = sliding.accelerationNoise < HOPELESS;
  const equation = new MotionEquation(record, sliding, measured, used, hasMass, p);
  const system = p.base ? onMovingBase(equation, record, windows, hasMass, p) : equation.onFixedBase();
  const { columns, given, design, right, base } = system;
  const fit = jackknife(design, right, windows.overlap);
  const model = Float64Array.from(given, (f, k) =>
    columns.reduce((sum, column, j) => sum + valueAt(fit.x, j) * valueAt(column, k), f),
  );
  return {
    sliding,
    jackknife: fit,
    forces: {
      window,
      time: Float64Array.from(model, (_, k) => record.start + windows.centre(k) * record.period),
      measured: Float64Array.from(measured),
      model,
      residual: Float64Array.from(measured, (f, k) => f - valueAt(model, k)),
      used,
    },
    baseAcceleration: base,
    hasMass,
    hasBothDirections: !fit.dependent[COULOMB],
    hasSeveralSpeeds: !fit.dependent[VISCOUS],
    direction: at(direction, used.indexOf(1)),
  };
}
