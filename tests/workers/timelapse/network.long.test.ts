import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { Tally } from '../../../workers/run/tally.ts';
import { batchSolver } from '../../../workers/solver/engine.ts';
import type { Cycle } from '../../../workers/timelapse/cycle.ts';
import { cycleSpan } from '../../../workers/timelapse/cycleSpan.ts';
import { measureCycle } from '../../../workers/timelapse/measureCycle.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { heldCold } from '../../benchmarks/lapse/bruteForce.ts';
import { shelfScene } from '../../scenes/runs.ts';
import { bareScene } from '../model/sceneOf.ts';

/** RMS of the force that the motors give between two instants of a run, s, N. */
function rmsForce(scene: Scene, from: number, to: number): number {
  const axis = new Axis(scene, { solver: batchSolver });
  const force = new Tally();
  while (axis.time < to) {
    expect(axis.step()).toBe(true);
    if (axis.time > from) force.add(axis.effort.force);
  }
  return force.rms;
}

it('a load that is held counts as the motor holds it in the long run, not as the guide helps it after the start', () => {
  const scene = heldCold(
    shelfScene('mould-shuttle', { program: 'hold', process: 'constant', processForce: 80 }),
  );
  const { ambient } = scene.parameters;
  const cold = { winding: ambient, carrier: ambient, table: ambient, screw: ambient };
  const cycle = measureCycle(scene, cycleSpan(scene), cold, false) as Cycle;
  const inTheLongRun = rmsForce(scene, 8, 9);
  expect(cycle.rmsForce / inTheLongRun).toBeCloseTo(1, 3);
  // The guide still carries part of it a second after the start.
  expect(rmsForce(scene, 1, 2) / inTheLongRun).toBeGreaterThan(1.004);
});

it('a settled axis warms in proportion to the square of the force', () => {
  const scene = bareScene({ program: 'hold', process: 'constant', processForce: 60, Ki: 1e9 });
  const double: Parameters = { ...scene.parameters, processForce: 120 };
  const rise = (parameters: Parameters) => {
    const { steady } = timeLapse({ ...scene, parameters }, { hours: 0.1 }).asSet;
    return present(steady).copper / (1 + 0.00393 * (present(steady).winding - 20));
  };
  expect(rise(double) / rise(scene.parameters)).toBeCloseTo(4, 3);
});
