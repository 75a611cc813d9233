import { PRESETS } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { EnergyFlow } from '../../shared/protocol/accuracy.ts';
import type { HeatState } from '../../shared/protocol/timeLapse.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../shared/study/job.ts';
import { energyFlow } from '../../workers/accuracy/energy.ts';
import { Axis } from '../../workers/run/axis.ts';
import { timeLapse } from '../../workers/timelapse/timeLapse.ts';

/*
 * Statements of common practice, without a source, are put to the model as it is: the presets of one class (300 N continuous) on the
 * default job and on a light, brisk one. The tests hold what was found, also where it is not what the statement says.
 */

export const CLASS = ['tubular', 'u-channel', 'flat'] as const;
export type Drive = (typeof CLASS)[number];

function job(changes: Partial<JobValues> = {}): Job {
  return { title: 'Practice', values: { ...defaultJobValues(), ...changes }, moves: [] };
}

export const DEFAULT_JOB = job();
/** Half a kilogram on a light table, eight moves a second. */
export const LIGHT_BRISK_JOB = job({
  payload: 0.5,
  tableMass: 1.5,
  stroke: 0.05,
  moveTime: 0.08,
  dwell: 0.045,
});

/** A payload of 5 kg moved as often as warms every drive of the class, none to its limit. */
export const WARM_JOB = job({ moveTime: 0.26, dwell: 0.1 });

/** A drive of the class on a job, with parameters changed. */
export function duty(on: Job, drive: Drive, changes: ParameterChanges = {}): Scene {
  const scene = candidateScene(on, { preset: drive, motorCount: 1, own: changes, gains: null }, PRESETS);
  return { ...scene, parameters: { ...scene.parameters, ...changes } };
}

/** How warm a drive gets in the long run: the cycle is run for at few temperatures, its losses follow them between. */
export function inTheLongRun(scene: Scene): HeatState {
  const { steady, trip } = timeLapse(scene, { hours: 0.05, refreshFraction: 0.05 }).asSet;
  if (!steady) throw new Error(trip?.kind ?? 'nothing settles');
  return steady;
}

export interface Conversion extends EnergyFlow {
  /** Mechanical energy that the motor gives to what it moves in one cycle, less its own drag, J; what braking takes back not subtracted. */
  readonly given: number;
  /** Of what the motor takes and does not lose: given/(given + copper + iron). */
  readonly efficiency: number;
}

/** How well a drive turns electrical into mechanical energy, over whole cycles. */
export function conversion(scene: Scene): Conversion {
  const flow = energyFlow(scene);
  const given = givenEnergy(scene, flow.cycleTime);
  return { ...flow, given, efficiency: given / (given + flow.copper + flow.iron) };
}

/** ∫ max(0, (F_motor − F_drag) v) dt over the second cycle. */
function givenEnergy(scene: Scene, cycleTime: number): number {
  const axis = new Axis(scene);
  const { currentRate } = scene.parameters;
  const ticks = Math.round(cycleTime * currentRate);
  let sum = 0;
  for (let k = 0; k < 2 * ticks; k++) {
    if (!axis.step()) throw new Error(axis.trip?.kind);
    const r = axis.record;
    if (k >= ticks)
      sum += Math.max((at(r, C.motorForce) - at(r, C.dragForce)) * at(r, C.motorSpeed), 0) / currentRate;
  }
  return sum;
}
