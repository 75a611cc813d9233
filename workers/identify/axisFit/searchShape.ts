import { at } from '../../../shared/core/at.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import { type ModeSide, motorSideMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { type Complex, magnitude, over, phase } from '../../math/complex.ts';
import { levenbergMarquardt } from '../../math/levenbergMarquardt.ts';
import { rms } from '../../math/statistics.ts';
import { type AxisShape, type AxisValues, axisResponse, packed, unpacked } from './axisShape.ts';

/** A plant over frequency: rad/s, and position over force, m/N. */
export interface PlantPoints {
  readonly omega: readonly number[];
  readonly plant: readonly Complex[];
}

/** A shape with the values that fit best. */
export interface FittedShape {
  readonly shape: AxisShape;
  readonly values: AxisValues;
  /** RMS of what is left between response and model, as a factor less 1 and in rad together. */
  readonly error: number;
  /** Bayesian information criterion: less is better. Source: Schwarz, Annals of Statistics 6(2), 1978. */
  readonly criterion: number;
}

const START_DAMPING = 0.03;
/** Mass of a further part at the start of a search, as a share of its side. */
const START_SHARE = 0.1;
/** Places from which a resonance is searched for: so many where the response stands out, so many where it falls short. */
const PLACES = 3;
/** The highest frequency of a part as a share of the rate of the position loop: the shapes know no sampling. */
const HIGHEST = 0.2;
/** A search ends when a step lowers the sum of squares by no more than this: of every start, and of the best. */
const COARSE = 0.03;
const FINE = 1e-9;
/** Of a part of the machine; with more of it, or beyond the points, a fit explains drag or delay by a part that nobody would find. */
const MAX_DAMPING = 0.3;

/**
 * The values of a shape from a start, by least squares of logarithm of size and phase alike, so that every decade counts.
 * Source: Pintelon, Schoukens, System Identification: A Frequency Domain Approach, 2nd ed. 2012, ch. 9 (from memory).
 */
export function fitShape(
  p: Parameters,
  { omega, plant }: PlantPoints,
  shape: AxisShape,
  start: AxisValues,
  tolerance = FINE,
): FittedShape {
  const count = 2 * omega.length;
  const left = (x: Float64Array, out: Float64Array) => {
    const response = axisResponse(p, unpacked(shape, x));
    omega.forEach((w, k) => {
      const ratio = over(at(plant, k), response(w));
      out[2 * k] = Math.log(magnitude(ratio));
      out[2 * k + 1] = phase(ratio);
    });
  };
  const unknowns = packed(start);
  const { x, residual } = levenbergMarquardt(left, unknowns, count, tolerance);
  const error = rms(residual);
  const values = unpacked(shape, x);
  const isSound =
    residual.every(Number.isFinite) &&
    values.modes.every(
      (mode) => mode.damping < MAX_DAMPING && mode.omega > at(omega, 0) && mode.omega < highestOf(p, omega),
    );
  return {
    shape,
    values,
    error: isSound ? error : Number.POSITIVE_INFINITY,
    criterion: isSound
      ? count * Math.log(error * error) + unknowns.length * Math.log(count)
      : Number.POSITIVE_INFINITY,
  };
}

/** All that moves as one mass. */
export function searchRigid(p: Parameters, points: PlantPoints, start: AxisValues): FittedShape {
  return fitShape(p, points, { hasLink: false, modes: [] }, start);
}

/** Parts above this are not told from what sampling makes of the response, rad/s. */
function highestOf(p: Parameters, omega: readonly number[]): number {
  return Math.min(2 * Math.PI * HIGHEST * positionRate(p), at(omega, omega.length - 1));
}

/** Two masses on a link, from where the response stands out of that of a mere mass. */
export function searchLink(
  p: Parameters,
  points: PlantPoints,
  rigid: AxisValues,
  delay: number,
): FittedShape | null {
  const motorMass = motorSideMass(p);
  const tableMass = Math.max(rigid.tableMass, START_SHARE * motorMass);
  const reduced = (motorMass * tableMass) / (motorMass + tableMass);
  const { omega, plant } = points;
  const height = omega.map((w, k) => magnitude(at(plant, k)) * w * w);
  const starts = [...turningPoints(height).slice(0, 2 * PLACES), omega.length - 1];
  return bestOf(
    p,
    points,

    starts.map((k) => {
      const w = at(omega, k);
      const link = { stiffness: reduced * w * w, damping: 2 * START_DAMPING * reduced * w };
      return fitShape(p, points, { hasLink: true, modes: [] }, { tableMass, delay, link, modes: [] }, COARSE);
    }),
  );
}

/** One flexible part more than a fit has, on whichever side suits, from where the response differs from it most. */
export function searchMode(
  p: Parameters,
  points: PlantPoints,
  { shape, values }: FittedShape,
): FittedShape | null {
  const { omega, plant } = points;
  const response = axisResponse(p, values);
  const ratio = omega.map((w, k) => magnitude(over(at(plant, k), response(w))));
  const inReach = (k: number) => at(omega, k) < highestOf(p, omega);
  const highest = turningPoints(ratio).filter(inReach).slice(0, PLACES);
  const lowest = turningPoints(ratio.map((each) => 1 / each))
    .filter(inReach)
    .slice(0, PLACES);
  // A part makes an anti-resonance at its own frequency and a resonance above it.
  const starts = [
    ...lowest.map((k) => at(omega, k)),
    ...highest.map((k) => at(omega, k) / (1 + START_SHARE / 2)),
  ];
  const sides: readonly ModeSide[] = shape.hasLink ? ['table', 'motor side'] : ['table'];
  return bestOf(
    p,
    points,

    starts.flatMap((w) =>
      sides.map((side) => {
        const whole = side === 'table' ? values.tableMass : motorSideMass(p);
        const mode = { side, mass: START_SHARE * whole, omega: w, damping: START_DAMPING };
        return fitShape(
          p,
          points,
          { ...shape, modes: [...shape.modes, side] },
          { ...values, modes: [...values.modes, mode] },
          COARSE,
        );
      }),
    ),
  );
}

/** The best of coarse fits, made fine; null where none is sound. */
function bestOf(p: Parameters, points: PlantPoints, fits: readonly FittedShape[]): FittedShape | null {
  const [best] = fits.filter(({ error }) => Number.isFinite(error)).sort((a, b) => a.error - b.error);
  const fine = best && fitShape(p, points, best.shape, best.values);
  return fine && Number.isFinite(fine.error) ? fine : null;
}

/** Where a row of values has its maxima, the highest first. */
function turningPoints(values: readonly number[]): number[] {
  return [...values.keys()]
    .filter((k) => k > 0 && k < values.length - 1)
    .filter((k) => at(values, k) > at(values, k - 1) && at(values, k) > at(values, k + 1))
    .sort((a, b) => at(values, b) - at(values, a));
}
