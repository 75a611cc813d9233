import { describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { DriveType, MoveLine, Scene } from '../../../shared/core/scene.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';

export function candidateOf(
  preset: string,
  changes: Partial<JobValues> = {},
  moves: readonly MoveLine[] = [],
) {
  const job: Job = { title: 'Shuttle', values: { ...defaultJobValues(), ...changes }, moves };
  const scene = candidateScene(job, { preset, motorCount: 1, own: {}, gains: null }, PRESETS);
  const { figures } = sizeCandidate(job, scene);
  const figure = (id: string) => present(figures.find((each) => each.id === id)).value;
  return { scene, figure };
}

export const apart = (a: number, b: number) => Math.abs(a / b - 1);

/*
 * The whole model against what is left of it on paper. Between them: what the loop does beside following, breakaway and
 * creep in the guide, ripple, and the deflection of the link.
 */
export function sizingAgrees(driveType: DriveType): void {
  describe(`sizing and simulation of ${driveType}`, () => {
    it('come to the same force and current', () => {
      const { scene, figure } = candidateOf(driveType);
      const run = measureRun(scene, 2.4);
      expect(run.trip).toBeNull();
      expect(apart(run.rmsForce, figure('rmsForce'))).toBeLessThan(0.01);
      expect(apart(run.rmsCurrent, figure('rmsCurrent'))).toBeLessThan(0.01);
      // Cogging need not be at its peak just where the force is.
      expect(apart(run.peakForce, figure('peakForce'))).toBeLessThan(0.03);
      expect(apart(run.peakCurrent, figure('peakCurrent'))).toBeLessThan(0.03);
      // On paper the winding is hot.
      expect(run.peakVoltage).toBeLessThan(1.01 * figure('voltage'));
      expect(run.peakVoltage).toBeGreaterThan(0.85 * figure('voltage'));
    });

    // The draught of the motion is the one thing that is left out on paper. A hard duty, so that copper and
    // magnets warm.
    it('come to the same winding temperature without the draught', () => {
      const { scene, figure } = candidateOf(driveType, { moveTime: 0.3, dwell: 0.1 });
      const still: Scene = { ...scene, parameters: { ...scene.parameters, speedCooling: 0 } };
      const { steady } = timeLapse(still, { hours: 0.1 }).asSet;
      expect(steady).not.toBeNull();
      expect(present(steady).winding).toBeGreaterThan(scene.parameters.ambient + 10);
      expect(Math.abs(present(steady).winding - figure('windingTemperature'))).toBeLessThan(1);
    });
  });
}
