import { rounded } from '../../shared/axis/tunedValue.ts';
import { at, valueAt } from '../../shared/core/at.ts';
import { positionRate } from '../../shared/core/crossChecks.ts';
import { loadSideMass, motorSideMass, movedMass } from '../../shared/core/movedMass.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import type { MeasuredResponse, TakenResponse, TwoMassFit } from '../../shared/protocol/response.ts';
import { PositionController } from '../analysis/positionController.ts';
import { responseOf } from '../analysis/response.ts';
import { SampledLoop } from '../analysis/sampledLoop.ts';
import {
  type Complex,
  magnitude,
  minus,
  ONE,
  over,
  phase,
  plus,
  scaled,
  times,
  unit,
} from '../math/complex.ts';
import { levenbergMarquardt } from '../math/levenbergMarquardt.ts';
import { rms } from '../math/statistics.ts';
import { positionOverForce } from './fit/twoMass.ts';

/** Points from which two masses and a delay can be told. */
const FEWEST = 12;
/** A link has to leave this share of what a rigid mass leaves, or it is not there. */
const WORTH_A_LINK = 0.7;
const START_DAMPING = 0.03;
/** What a fit may leave, RMS of logarithm and phase: beyond it the response is not that of this axis. */
const MAX_ERROR = 0.3;
/** Starts of the search for the resonance, as many as there are places where the response stands out. */
const STARTS = 6;

/**
 * A response as measured on a real axis, turned into the open loop with the controller that is set now, and fitted: P = L/C. Points
 * from half the rate of the position loop on are left out: a sampled loop knows none.
 *
 * @throws RangeError where the response has too few points in the band
 */
export function takeResponse(p: Parameters, measured: MeasuredResponse): TakenResponse {
  const controller = new PositionController(p);
  const inBand = [...measured.frequency.keys()].filter(
    (k) => valueAt(measured.frequency, k) > 0 && valueAt(measured.frequency, k) < positionRate(p) / 2,
  );
  if (inBand.length < FEWEST)
    throw new RangeError(
      `The response has ${inBand.length} points below half the rate of the position loop; at least ${FEWEST} are needed.`,
    );
  const omega = inBand.map((k) => 2 * Math.PI * valueAt(measured.frequency, k));
  const feedback = omega.map((w) => {
    const { position, speed } = controller.feedback(unit(w * controller.period));
    return scaled(plus(position, speed), 1 / controller.perForce);
  });
  const loop = inBand.map((k, i): Complex => {
    const value = { re: valueAt(measured.re, k), im: valueAt(measured.im, k) };
    if (measured.kind === 'open loop') return value;
    return measured.kind === 'sensitivity' ? minus(over(ONE, value), ONE) : times(at(feedback, i), value);
  });
  return {
    loop: {
      frequency: Float64Array.from(omega, (w) => w / (2 * Math.PI)),
      openLoop: responseOf(loop),
      sensitivity: responseOf(
        loop.map((value) => over(ONE, plus(ONE, value))),
        'highest',
      ),
      coherence: new Float64Array(loop.length).fill(1),
      ended: null,
    },
    fit: fitAxis(
      p,
      omega,
      loop.map((value, i) => over(value, at(feedback, i))),
    ),
  };
}

/**
 * Two masses are not all there is: the back-EMF, for one, moves a resonance by some per cent. So the model of the whole axis, with the
 * values found, is fitted in the same way, and what that gets wrong is put right. Source: indirect inference, Gourieroux, Monfort,
 * Renault, J. Applied Econometrics 8(S1), 1993 (from memory).
 */
function fitAxis(p: Parameters, omega: readonly number[], plant: readonly Complex[]): TwoMassFit | string {
  const sizes = plant.map(magnitude);
  if (!sizes.every((size) => size > 0 && Number.isFinite(size)))
    return 'The response is zero or not finite in places: there is nothing to fit.';
  const fit = fitTwoMasses(p, omega, plant);
  if (typeof fit !== 'string' && fit.error > MAX_ERROR)
    return 'Neither a rigid mass nor two masses on a link have this response: check which kind of response it is, its columns, and that the gains on the bench are those it was measured with.';
  if (typeof fit === 'string' || fit.link === null) return fit;
  const model = { ...p, ...fit.changes };
  const again = fitTwoMasses(model, omega, modelPlant(model, omega));
  if (typeof again === 'string' || again.link === null) return fit;
  const mass = fit.mass * (movedMass(model) / again.mass);
  const stiffness = fit.link.stiffness * (model.linkStiffness / again.link.stiffness);
  const damping = fit.link.damping * (model.linkDamping / again.link.damping);
  return {
    ...fit,
    mass,
    link: { ...fit.link, stiffness, damping },
    changes: {
      ...massChange(p, mass),
      linkStiffness: rounded('linkStiffness', stiffness),
      linkDamping: rounded('linkDamping', damping),
    },
  };
}

/** Encoder reading over motor force of the model, m/N, with its guide sliding. */
function modelPlant(p: Parameters, omega: readonly number[]): Complex[] {
  const loop = new SampledLoop(p, { ...startingPoint(p), friction: 'sliding' });
  const controller = new PositionController(p);
  return omega.map((w) => {
    const { position, speed } = controller.feedback(unit(w * controller.period));
    return over(loop.openLoop(w), scaled(plus(position, speed), 1 / controller.perForce));
  });
}

/**
 * Two masses on a link, the current loop as it is set and a delay, to a plant: logarithm of size and phase alike, so that every decade counts. The mass on the motor
 * side is known. Source: Pintelon, Schoukens, System Identification: A Frequency Domain Approach, 2nd ed. 2012, ch. 9 (logarithmic
 * least squares, from memory).
 */
function fitTwoMasses(
  p: Parameters,
  omega: readonly number[],
  plant: readonly Complex[],
): TwoMassFit | string {
  const motorMass = motorSideMass(p);
  const inertias = omega.map((w, k) => magnitude(at(plant, k)) * w * w).sort((a, b) => a - b);
  const total = 1 / at(inertias, Math.floor(inertias.length / 3));
  if (!(total > motorMass))
    return `The response belongs to a mass below that of the motor alone: check its unit, and which kind of response it is.`;
  const delay = 0.5 / positionRate(p);
  const left = (model: (w: number, x: Float64Array) => Complex) => (x: Float64Array, out: Float64Array) => {
    omega.forEach((w, k) => {
      const ratio = over(at(plant, k), model(w, x));
      out[2 * k] = Math.log(magnitude(ratio));
      out[2 * k + 1] = phase(ratio);
    });
  };
  // The current loop with its pole cancelled: an integrator behind 1.5 periods. What else delays is fitted.
  const bandwidth = 2 * Math.PI * p.currentBandwidth;
  const delayed = (value: Complex, w: number, t: number) =>
    over(
      times(value, unit(-w * t)),
      plus(ONE, times({ re: 0, im: w / bandwidth }, unit((1.5 * w) / p.currentRate))),
    );
  const rigid = (w: number, x: Float64Array) =>
    delayed({ re: -1 / (Math.exp(valueAt(x, 0)) * w * w), im: 0 }, w, valueAt(x, 1));
  const count = 2 * omega.length;
  const asRigid = levenbergMarquardt(left(rigid), [Math.log(total), delay], count);

  const side = p.encoderSide === 'load' ? 'load' : 'motor';
  const linked = (w: number, x: Float64Array) => {
    const masses = {
      motorMass,
      tableMass: Math.exp(valueAt(x, 0)),
      stiffness: Math.exp(valueAt(x, 1)),
      damping: Math.exp(valueAt(x, 2)),
      motorDamping: 0,
      guideStiffness: 0,
      guideDamping: 0,
    };
    return delayed(positionOverForce(w, masses, side), w, valueAt(x, 3));
  };
  const tableMass = Math.max(total - motorMass, 0.1 * motorMass);
  const reduced = (motorMass * tableMass) / (motorMass + tableMass);
  const tried = resonancesOf(omega, plant).map((w) => {
    const stiffness = reduced * w * w;
    const damping = 2 * START_DAMPING * reduced * w;
    return levenbergMarquardt(
      left(linked),
      [Math.log(tableMass), Math.log(stiffness), Math.log(damping), delay],
      count,
    );
  });
  const [best] = tried
    .filter(({ residual }) => Number.isFinite(rms(residual)))
    .sort((a, b) => rms(a.residual) - rms(b.residual));
  if (!best || rms(best.residual) > WORTH_A_LINK * rms(asRigid.residual)) {
    const mass = Math.exp(valueAt(asRigid.x, 0));
    return {
      mass,
      link: null,
      delay: valueAt(asRigid.x, 1),
      error: rms(asRigid.residual),
      changes: massChange(p, mass),
    };
  }
  const [table = 0, stiffness = 0, damping = 0] = Array.from(best.x.slice(0, 3), Math.exp);
  const together = (motorMass * table) / (motorMass + table);
  const resonance = Math.sqrt(stiffness / together);
  const mass = motorMass + table;
  return {
    mass,
    link: {
      stiffness,
      damping,
      resonance: resonance / (2 * Math.PI),
      dampingRatio: damping / (2 * together * resonance),
    },
    delay: valueAt(best.x, 3),
    error: rms(best.residual),
    changes: {
      ...massChange(p, mass),
      linkStiffness: rounded('linkStiffness', stiffness),
      linkDamping: rounded('linkDamping', damping),
    },
  };
}

/** The payload that makes the axis as heavy as this; the table gives way where the payload alone cannot. */
function massChange(p: Parameters, mass: number) {
  const missing = mass - movedMass(p);
  const payload = Math.max(p.payload + missing, 0);
  const rest = loadSideMass(p) + missing - payload;
  return {
    payload: rounded('payload', payload),
    ...(payload === 0 && { tableMass: rounded('tableMass', rest) }),
  };
}

/** Where the response stands highest above a mere mass, rad/s: the first starts of a search. */
function resonancesOf(omega: readonly number[], plant: readonly Complex[]): number[] {
  const height = omega.map((w, k) => magnitude(at(plant, k)) * w * w);
  const peaks = [...omega.keys()].filter(
    (k) =>
      k > 0 && k < omega.length - 1 && at(height, k) > at(height, k - 1) && at(height, k) > at(height, k + 1),
  );
  const highest = peaks.sort((a, b) => at(height, b) - at(height, a)).slice(0, STARTS);
  return [...highest.map((k) => at(omega, k)), at(omega, omega.length - 1)];
}
