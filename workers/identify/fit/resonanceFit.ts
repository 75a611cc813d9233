import { dryMotorDrag } from '../../../shared/axis/drag.ts';
import { shaftCompliance } from '../../../shared/axis/screw.ts';
import { valueAt } from '../../../shared/core/at.ts';
import { loadSideMass, motorSideMass, movedMass } from '../../../shared/core/movedMass.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { ResonanceFit } from '../../../shared/protocol/fit.ts';
import { magnitude, times, unit } from '../../math/complex.ts';
import { levenbergMarquardt, type Minimum } from '../../math/levenbergMarquardt.ts';
import { range, rms } from '../../math/statistics.ts';
import { findResonance } from './findResonance.ts';
import { jackknife, scatter, TWENTY_FOUR_BLOCKS } from './jackknife.ts';
import { between, type Lines, linesOf, smoothed } from './lines.ts';
import { SampledCurrent } from './sampledCurrent.ts';
import { positionOverForce, type TwoMass } from './twoMass.ts';

/** The part of the spectrum that is fitted, in multiples of the resonance. */
const BAND = [0.25, 1.8] as const;
const FEWEST_LINES = 100;
/** Number of iterations in which the noise is estimated from the residual. */
const ROUNDS = 5;
/** Smallest relative reduction of the sum of squares that is worth another step. */
const WORTH = 1e-6;
/** A trace that moves by more than this is a move, m. */
const STANDS = 2e-3;
/** Largest dry drag on the motor side as a share of the rms force: it does not act as a damper. */
const MAX_DRAG = 0.1;
/** Initial damping ratio, and skew of the records (s). */
const START_DAMPING = 0.03;
const START_SKEW = 1e-6;

interface LinkResonance {
  readonly stiffness: number;
  readonly scatter: number;
  /**
   * Relative change of the stiffness per relative change of the motor-side mass, and of the force.
   */
  readonly perMotorMass: number;
  readonly perForce: number;
  readonly curve: ResonanceFit;
}

/**
 * The link from a sweep at standstill: the two masses of twoMass.ts are fitted to all spectral
 * lines around their resonance. The mass on the motor side is taken as known, because only the
 * combination m1 m2/(m1 + m2) can be identified. Fitted are the mass of the table, stiffness and
 * damping of link and guide, and the skew of the records; each line is weighted by the noise around
 * it, which is estimated from the residual. Source: Pintelon, Schoukens, System Identification: A
 * Frequency Domain Approach, 2nd ed. 2012, ch. 9.
 *
 * @returns a text that says why, where it cannot be done
 */
export function fitResonance(
  force: Float64Array,
  position: Float64Array,
  period: number,
  p: Parameters,
): LinkResonance | string {
  if (range(position) > STANDS) {
    return 'The link can be identified from a sweep at standstill, or from a move with the positions of both motor and table recorded.';
  }
  if (p.backlash > 0) {
    return 'With lost motion a sweep shows no constant stiffness: record the positions of motor and table in a move.';
  }
  if (dryMotorDrag(p) > MAX_DRAG * rms(force)) {
    return 'The dry drag of nut or iron takes too much of the force in a sweep: sweep with a larger force, or record the positions of motor and table in a move.';
  }
  const all = linesOf(force, position, period);
  const found = findResonance(all, movedMass(p));
  if (typeof found === 'string') return found;
  const low = Math.max(found.low, BAND[0] * found.at);
  const lines = between(all, low, Math.min(found.high, BAND[1] * found.at));
  if (lines.frequency.length < FEWEST_LINES)
    return 'The trace is too short to resolve the resonance of the link.';
  if (isSampledWithCommand(period, p)) withoutImages(lines, new SampledCurrent(period, p));

  const model = new Model(lines, startAt(found.at, p), p);
  let fit = model.fit(START);
  for (let round = 0; round < ROUNDS; round++) {
    model.reweight(fit.residual);
    fit = model.fit(fit.x);
  }
  // One Gauss–Newton step without each block of lines: exact as far as the model is linear there.
  const moves = jackknife(
    fit.jacobian,
    fit.residual.map((r) => -r),
    lines.overlap,
    TWENTY_FOUR_BLOCKS,
  );
  const moved = (move: Float64Array) => model.unknowns(fit.x.map((value, k) => value + valueAt(move, k)));
  const none = new Float64Array(START.length);
  const screw = screwCompliance(position, p);
  const stiffness = (move: Float64Array) => 1 / (1 / moved(move).masses.stiffness - screw);
  const { motorMass: m1, tableMass: m2, stiffness: whole } = moved(none).masses;
  if (whole * screw >= 1)
    return 'The resonance lies where the screw shaft alone would put it: check its rigidity and span.';
  const share = stiffness(none) / whole;
  return {
    stiffness: stiffness(none),
    scatter: scatter(moves, stiffness),
    // k = ω² m1 m2/(m1 + m2) at a known ω, with the sum of both proportional to the force; and the
    // screw in series.
    perMotorMass: (share * Math.abs(m2 - m1)) / m2,
    perForce: (share * m1) / m2,
    curve: model.curve(fit.x, found.at),
  };
}

interface Unknowns {
  readonly masses: TwoMass;
  /** s */
  readonly skew: number;
}

/**
 * The unknowns of the fit, relative to the initial values: logarithms for mass, stiffness and
 * damping of the link, which are positive, and plain factors for guide, drag and skew, which may be
 * 0.
 */
const START = [0, 0, 0, 0, 0, 0, 0];

/** The two masses with seven unknowns, and the lines to fit them to. */
class Model {
  readonly #lines: Lines;
  readonly #start: Unknowns;
  readonly #p: Parameters;
  readonly #weight: Float64Array;

  constructor(lines: Lines, start: Unknowns, p: Parameters) {
    this.#lines = lines;
    this.#start = start;
    this.#p = p;
    this.#weight = lines.effect.magnitudes().map((size) => 1 / size);
  }

  unknowns(u: Float64Array): Unknowns {
    const { masses: s, skew } = this.#start;
    return {
      masses: {
        motorMass: s.motorMass,
        motorDamping: s.motorDamping * valueAt(u, 6),
        tableMass: s.tableMass * Math.exp(valueAt(u, 0)),
        stiffness: s.stiffness * Math.exp(valueAt(u, 1)),
        damping: s.damping * Math.exp(valueAt(u, 2)),
        guideStiffness: s.guideStiffness * valueAt(u, 3),
        guideDamping: s.guideDamping * valueAt(u, 4),
      },
      skew: skew * valueAt(u, 5),
    };
  }

  fit(start: ArrayLike<number>): Minimum {
    return levenbergMarquardt(
      (u, out) => this.#residuals(u, out),
      start,
      2 * this.#lines.frequency.length,
      WORTH,
    );
  }

  /** Weights each line by the inverse of the noise around it in the residual. */
  reweight(residual: Float64Array): void {
    const power = this.#weight.map(
      (w, k) => (valueAt(residual, 2 * k) ** 2 + valueAt(residual, 2 * k + 1) ** 2) / (w * w),
    );
    this.#weight.set(smoothed(power).map((noise) => 1 / Math.sqrt(noise)));
  }

  curve(u: Float64Array, resonance: number): ResonanceFit {
    const { frequency, cause, effect } = this.#lines;
    const { masses } = this.unknowns(u);
    const force = cause.magnitudes();
    return {
      resonance,
      frequency: Float64Array.from(frequency),
      measured: Float64Array.from(effect.magnitudes(), (position, k) => position / valueAt(force, k)),
      model: Float64Array.from(frequency, (f) =>
        magnitude(positionOverForce(2 * Math.PI * f, masses, this.#p.encoderSide)),
      ),
    };
  }

  #residuals(u: Float64Array, out: Float64Array): void {
    const { frequency, cause, effect } = this.#lines;
    const { masses, skew } = this.unknowns(u);
    const weight = this.#weight;
    for (let k = 0; k < frequency.length; k++) {
      const omega = 2 * Math.PI * valueAt(frequency, k);
      const g = times(positionOverForce(omega, masses, this.#p.encoderSide), unit(omega * skew));
      const xr = valueAt(cause.re, k);
      const xi = valueAt(cause.im, k);
      const w = valueAt(weight, k);
      out[2 * k] = w * (valueAt(effect.re, k) - g.re * xr + g.im * xi);
      out[2 * k + 1] = w * (valueAt(effect.im, k) - g.re * xi - g.im * xr);
    }
  }
}

function startAt(resonance: number, p: Parameters): Unknowns {
  const [motorMass, tableMass] = [motorSideMass(p), loadSideMass(p)];
  const omega = 2 * Math.PI * resonance;
  const reduced = (motorMass * tableMass) / (motorMass + tableMass);
  return {
    masses: {
      motorMass,
      motorDamping: dryMotorDrag(p) > 0 ? START_DAMPING * omega * motorMass : 0,
      tableMass,
      stiffness: omega * omega * reduced,
      damping: 2 * START_DAMPING * omega * reduced,
      guideStiffness: p.bristleStiffness,
      guideDamping: p.bristleDamping + p.viscous,
    },
    skew: START_SKEW,
  };
}

/**
 * Compliance of the shaft between its bearing and the nut, in series with nut and bearings, m/N.
 */
function screwCompliance(position: Float64Array, p: Parameters): number {
  const place = position.find((x) => !Number.isNaN(x)) ?? 0;
  return shaftCompliance(p, place);
}

/** True when the record has one sample for each command that the drive holds. */
function isSampledWithCommand(period: number, p: Parameters): boolean {
  return Math.abs((period * p.currentRate) / p.positionDivider - 1) < 1e-3;
}

/** Converts the spectrum of the samples of the force into that of the force. */
function withoutImages({ frequency, cause }: Lines, sampled: SampledCurrent): void {
  for (const [k, f] of frequency.entries()) cause.set(k, times(cause.at(k), sampled.factor(f)));
}
