import { startGains } from '../../../shared/axis/loop/startGains.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { TestResult } from '../../../shared/protocol/accuracy.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';
import { bareScene } from '../model/sceneOf.ts';

/** Nothing warms what takes up heat without end. */
const NO_WARMING = {
  windingCapacity: 1e12,
  carrierCapacity: 1e12,
  tableCapacity: 1e12,
  screwCapacity: 1e12,
} as const;

/** A screw with its encoder on the motor. */
export const SCREW = { lead: 0.02, rotorInertia: 1.5e-4, encoderSide: 'motor', screwSpan: 0.45 } as const;

/** A bare axis with start gains for this crossover, Hz, that stays as warm as it is; half the usual rates, for tests to be quick. */
export function tunedScene(crossover: number, changes: ParameterChanges = {}): Scene {
  const scene = bareScene({ ...NO_WARMING, currentRate: 8000, ...changes });
  const parameters = { ...scene.parameters, ...startGains(scene.parameters, crossover), ...changes };
  return { ...scene, parameters };
}

export function jobOf(values: Partial<JobValues> = {}): Job {
  return { title: 'Bench', values: { ...defaultJobValues(), ...values }, moves: [] };
}

/** What a test found; it must not have tripped. */
export function found<T extends object>(result: TestResult<T>): T {
  if ('trip' in result) throw new Error(result.trip.kind);
  return result;
}
