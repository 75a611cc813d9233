import { slopeForce } from '../../../shared/axis/gravity.ts';
import { breakawayForce, hasDryFriction, slidingFriction } from '../../../shared/axis/guide.ts';
import { motorConstants, voltageLimit } from '../../../shared/axis/motor.ts';
import { wornParameters } from '../../../shared/axis/wear.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { positionRate } from '../../../shared/core/crossChecks.ts';
import { ranged } from '../../../shared/core/format.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { problemText } from '../../../shared/core/problem.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { LoopExperiment, LoopFigures, OperatingPoint } from '../../../shared/protocol/analysis.ts';
import { BENCH_WORDING } from '../../bench/bench.ts';

/** What a person can set about an experiment: N, Hz, Hz, s. */
export type Sweep = Pick<Parameters, 'sweepForce' | 'sweepFrom' | 'sweepTo' | 'sweepTime'>;

/** Tones of the stepped sine per decade. */
const TONES_PER_DECADE = 16;
/** Longest that the axis is given to come to rest between sweeps, s. */
const REST = 0.5;
/** Beyond this multiple of the current loop's bandwidth there is nothing left to measure. */
const BANDWIDTHS = 2;

/*
 * How large a force is: common practice, no source. Sliding, so large that the friction it turns round against is small beside it; presliding, so
 * small that the bristles only bend. Both far inside what the motor and the following error allow.
 */
const TIMES_FRICTION = 8;
const SHARE_OF_FRICTION = 0.1;
const SHARE_OF_MOTOR = 0.35;
const SHARE_OF_VOLTAGE = 0.5;
const SHARE_OF_ERROR_LIMIT = 0.25;

/** A sweep that suits the loop: about its crossover, and with a force that keeps the guide in the state that is looked at. */
export function suggestedSweep(p: Parameters, point: OperatingPoint, figures: LoopFigures): Sweep {
  const { forcePerAmp, inductance } = motorConstants(p);
  const crossover = figures.crossover ?? 50;
  const worn = wornParameters(p);
  const friction = slidingFriction(worn) + worn.nutDrag;
  const motor = SHARE_OF_MOTOR * (forcePerAmp * p.peakCurrent - Math.abs(slopeForce(p)));
  const error = SHARE_OF_ERROR_LIMIT * p.followingErrorLimit * figures.minimumStiffness.value;
  const sweepTo = Math.min(0.4 * positionRate(p), BANDWIDTHS * p.currentBandwidth);
  // The inductance takes v = 2πf L i of the bus, at the end of the sweep most.
  const bus = voltageLimit(p);
  const voltage = (SHARE_OF_VOLTAGE * forcePerAmp * bus) / (2 * Math.PI * sweepTo * inductance);
  const wanted = point.friction === 'sliding' ? TIMES_FRICTION * friction : SHARE_OF_FRICTION * friction;
  const max = Math.min(motor, error, voltage);
  // Without friction any force does; a tenth of the most is far above noise and rounding.
  const force = Math.min(friction > 0 ? wanted : 0.1 * max, max);
  return {
    sweepForce: Math.max(Number(force.toPrecision(2)), 1e-3),
    sweepFrom: Math.max(1, Number((crossover / 12).toPrecision(1))),
    sweepTo: Number(sweepTo.toPrecision(2)),
    sweepTime: 12,
  };
}

/**
 * What the force of an experiment at standstill, N, makes of the guide where the analysed model takes it otherwise; null where
 * the two agree.
 */
export function guideNote(p: Parameters, { friction }: OperatingPoint, force: number): string | null {
  if (!hasDryFriction(p)) return null;
  const worn = wornParameters(p);
  const breakaway = breakawayForce(worn) + worn.nutDrag;
  const isStuck = force <= breakaway;
  if (isStuck === (friction === 'presliding')) return null;
  const [applied, needed] = [ranged(force, 'N'), ranged(breakaway, 'N')];
  return isStuck
    ? `The force of ${applied} does not break the guide loose, which takes ${needed}: it is presliding, and its bristles hold the table like a spring. The model drawn here is sliding: look at presliding, or use a larger force.`
    : `The force of ${applied} can break the guide loose, which takes ${needed}. The model drawn here is presliding: look at sliding, or use a smaller force.`;
}

/** The experiment on a copy of the scene, at the operating point and standing; or in words what of it cannot be. */
export function experimentOf(
  scene: Scene,
  kind: LoopExperiment['kind'],
  point: OperatingPoint,
  sweep: Sweep,
): { readonly experiment: LoopExperiment } | { readonly problem: string } {
  const p = scene.parameters;
  const decades = Math.log10(sweep.sweepTo / sweep.sweepFrom);
  const wanted: ParameterChanges = {
    ...sweep,
    sweepTime: kind === 'chirp' ? sweep.sweepTime / 3 : sweep.sweepTime,
    program: kind,
    sweepPoints: Math.min(Math.max(Math.round(TONES_PER_DECADE * decades) + 1, 2), 400),
    dwell: REST,
    start: point.position,
    drive: 'on',
    process: 'none',
    // At the limit itself the drive would trip.
    windingStart: Math.min(point.windingTemperature, p.foldbackTemperature - 1),
    carrierStart: point.carrierTemperature,
  };
  const { changes, problems } = checkParameters(wanted, p);
  const problem = problems[0];
  if (problem) return { problem: problemText(problem, BENCH_WORDING) };
  return { experiment: { kind, scene: { ...scene, moves: [], parameters: { ...p, ...changes } } } };
}
