import { holdingForce } from '../../shared/axis/gravity.ts';
import { interpolationTerms, rippleTerms } from '../../shared/axis/periodic.ts';
import { valueAt } from '../../shared/core/at.ts';
import { inUnit, ranged } from '../../shared/core/format.ts';
import { loadSideMass, motorSideMass, movedMass } from '../../shared/core/movedMass.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { FitOptions, FitResult, Goodness, Known, ResonanceFit } from '../../shared/protocol/fit.ts';
import type { Trace } from '../../shared/protocol/trace.ts';
import { changesOf } from './fit/changes.ts';
import { fitDelay } from './fit/delayFit.ts';
import { Findings } from './fit/findings.ts';
import { goodnessOf } from './fit/goodness.ts';
import { blockScatter, scatter, whiteScatter } from './fit/jackknife.ts';
import { fitLink } from './fit/linkFit.ts';
import { BIAS, COULOMB, MASS, VISCOUS } from './fit/motionEquation.ts';
import { fitMotion, type MotionFit } from './fit/motionFit.ts';
import { forceOf } from './fit/motorForce.ts';
import { fitResonance } from './fit/resonanceFit.ts';
import { BELIEVED, findScale, type Scale } from './fit/scale.ts';

const MOTOR_MASS_TOLERANCE = 0.01;
const IN_MOTION = ['mass', 'forceConstant', 'coulomb', 'viscous', 'bias'] as const;

/**
 * Fits the axis to a trace, with a confidence interval for each number. What is not fitted is taken
 * from the parameters `p`: motor constants, mass on the motor side, periods of ripple and cogging,
 * rates. What the trace does not show is not guessed; the result says why.
 */
export function fitTrace(trace: Trace, p: Parameters, options: FitOptions = {}): FitResult {
  const findings = new Findings();
  noteTrace(trace, p, findings);
  const motion = takeMotion(trace, p, options.known ?? { kind: 'force constant' }, findings);
  const scale = motion?.scale ?? BELIEVED;
  const resonance = takeLink(trace, motion?.fit ?? null, scale, p, options, findings);
  takeDelay(trace, motion !== null, p, findings);
  const goodness = motion && judge(motion.fit, findings);
  const { estimates, unfitted, notes } = findings;
  return {
    estimates,
    unfitted,
    forces: motion?.fit.forces ?? null,
    goodness,
    resonance,
    notes,
    changes: changesOf(estimates, p),
  };
}

function noteTrace(trace: Trace, p: Parameters, findings: Findings): void {
  if (trace.current === null) findings.note('The current was not recorded: its command is used instead.');
  if (trace.resampled === 'interpolated') {
    findings.note('The rows are unevenly spaced in time: they were interpolated, which smooths fast motion.');
  }
  if (trace.resampled === 'time rounded') {
    findings.note('The times are written with too few digits: the rows are taken as evenly spaced.');
  }
  if (trace.gaps.length > 0) {
    const missing = trace.gaps.reduce((sum, { from, to }) => sum + to - from, 0);
    findings.note(`${trace.gaps.length} gaps, ${ranged(missing, 's')} in all, are left out.`);
  }
  if (p.process !== 'none')
    findings.note('The process force is not in the model: it counts as friction, or as unexplained.');
}

function takeMotion(
  trace: Trace,
  p: Parameters,
  known: Known,
  findings: Findings,
): { readonly fit: MotionFit; readonly scale: Scale } | null {
  const fit = motionOf(trace, p);
  if (typeof fit === 'string') {
    findings.miss(IN_MOTION, fit);
    return null;
  }
  const { jackknife, hasMass, hasBothDirections, hasSeveralSpeeds } = fit;
  const scale = hasMass ? scaleOf(fit, known, p, findings) : BELIEVED;
  if (!hasMass) {
    findings.miss(
      ['mass', 'forceConstant'],
      'The table accelerates too little against the noise of its encoder.',
    );
  }
  const take = (name: 'bias' | 'coulomb' | 'viscous', figure: (x: Float64Array) => number) => {
    const value = scale.value * figure(jackknife.x);
    findings.take(name, value, scale.value * scatter(jackknife, figure), scale.tolerance * Math.abs(value));
  };
  if (hasBothDirections) {
    take('bias', (x) => valueAt(x, BIAS));
    take('coulomb', (x) => valueAt(x, COULOMB));
  } else {
    const holding = holdingForce(p) / scale.value;
    take('coulomb', (x) => fit.direction * (valueAt(x, BIAS) - holding));
    findings.miss(
      ['bias'],
      'The table moves in one direction only, where friction and a constant load cannot be told apart. The load is taken from the parameters.',
    );
  }
  if (hasSeveralSpeeds) take('viscous', (x) => valueAt(x, VISCOUS));
  else
    findings.miss(
      ['viscous'],
      'The table moves at one speed only, where viscous and sliding friction cannot be told apart.',
    );
  return { fit, scale };
}

/**
 * The current as measured, or its command where it was not recorded.
 *
 * @throws RangeError where neither was
 */
function currentOf({ current, currentCommand }: Trace): Float64Array {
  const found = current ?? currentCommand;
  if (found === null) throw new RangeError('The trace has neither the current nor its command.');
  return found;
}

function motionOf(trace: Trace, p: Parameters): MotionFit | string {
  const force = forceOf(currentOf(trace), p);
  const { position, period, start } = trace;
  return fitMotion({ force, position, motorPosition: trace.motorPosition ?? position, period, start }, p);
}

function scaleOf(fit: MotionFit, known: Known, p: Parameters, findings: Findings): Scale {
  if (known.kind !== 'added mass') return findScale(fit, known, p, findings);
  const { kind, mass, tolerance, trace } = known;
  const added = motionOf(trace, p);
  if (typeof added !== 'string' && added.hasMass)
    return findScale(fit, { kind, mass, tolerance, fit: added }, p, findings);
  findings.note('The run with the mass added shows no mass, so the force constant is taken as known.');
  return findScale(fit, { kind: 'force constant' }, p, findings);
}

/** The link from both its ends in a move, otherwise from a sweep at standstill. */
function takeLink(
  trace: Trace,
  motion: MotionFit | null,
  scale: Scale,
  p: Parameters,
  { motorMassTolerance = MOTOR_MASS_TOLERANCE }: FitOptions,
  findings: Findings,
): ResonanceFit | null {
  const force = forceOf(currentOf(trace), p).map((f) => scale.value * f);
  const motor = p.encoderSide === 'motor' ? trace.position : trace.motorPosition;
  const table = p.encoderSide === 'load' ? trace.position : trace.tablePosition;
  const masses = motorSideMass(p) / loadSideMass(p);
  if (motion && motor && table) {
    const link = fitLink(force, motor, table, motion, p);
    if (typeof link === 'string') {
      findings.miss(['linkStiffness', 'backlash'], link);
      return null;
    }
    const { jackknife, stiffness, backlash, backlashTolerance } = link;
    const value = stiffness(jackknife.x);
    // The force of the link is m2 a2: errors of F and of m1 a1 count by their share of it.
    const tolerance = Math.hypot((1 + masses) * scale.tolerance, masses * motorMassTolerance);
    findings.take('linkStiffness', value, scatter(jackknife, stiffness), tolerance * value);
    if (p.backlash > 0)
      findings.take('backlash', backlash(jackknife.x), scatter(jackknife, backlash), backlashTolerance);
    else findings.miss(['backlash'], 'The parameters have no lost motion; enter some to have it fitted.');
    return null;
  }
  findings.miss(
    ['backlash'],
    'Lost motion can be identified from a move with the positions of both motor and table recorded.',
  );
  const resonance = fitResonance(force, trace.position, trace.period, p);
  if (typeof resonance === 'string') {
    findings.miss(['linkStiffness'], resonance);
    return null;
  }
  const { stiffness, perForce, perMotorMass } = resonance;
  const forceTolerance = Math.hypot(scale.tolerance, localTolerance(p));
  const tolerance = Math.hypot(perForce * forceTolerance, perMotorMass * motorMassTolerance);
  findings.take('linkStiffness', stiffness, resonance.scatter, tolerance * stiffness);
  return resonance.curve;
}

/**
 * A sweep meets the force constant at one place of its ripple, and the encoder at one place of its
 * interpolation error: relative half-width of both.
 */
function localTolerance(p: Parameters): number {
  const ripple = rippleTerms(p).reduce((sum, { amplitude }) => sum + amplitude, 0);
  const slopes = interpolationTerms(p).map(({ amplitude, period }) => (2 * Math.PI * amplitude) / period);
  return slopes.reduce((sum, slope) => sum + slope, ripple);
}

function takeDelay(
  { current, currentCommand, period }: Trace,
  moves: boolean,
  p: Parameters,
  findings: Findings,
): void {
  if (!current || !currentCommand) {
    findings.miss(['delay'], 'This needs both the current and its command.');
    return;
  }
  const mass = findings.estimates.mass?.value ?? movedMass(p);
  const fit = fitDelay(currentCommand, current, period, mass, moves, p);
  if (typeof fit === 'string') findings.miss(['delay'], fit);
  else findings.take('delay', fit.delay, fit.scatter, fit.tolerance);
}

function judge(motion: MotionFit, findings: Findings): Goodness {
  const mass = (x: Float64Array) => valueAt(x, MASS);
  const white = whiteScatter(motion.jackknife, mass);
  const goodness = goodnessOf(
    motion.forces,
    white > 0 ? Math.max(1, blockScatter(motion.jackknife, mass) / white) : 1,
  );
  const left = `${inUnit(goodness.rmsResidual / goodness.rmsForce, '%', 2)} of ${ranged(goodness.rmsForce, 'N')} rms`;
  if (goodness.verdict === 'poor') {
    findings.note(
      `The model leaves ${left} unexplained: a force acts that it does not contain. Treat the numbers with care.`,
    );
  }
  if (goodness.verdict === 'not white') {
    findings.note(
      `The residual, ${left}, is not noise alone. The intervals allow for that: they are found by leaving out parts of the trace.`,
    );
  }
  return goodness;
}
