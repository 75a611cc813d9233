import fc from 'fast-check';
import { expect, it } from 'vitest';
import { measureRun } from '../../workers/run/measureRun.ts';
import { batchSolver } from '../../workers/solver/engine.ts';
import { anyScene } from '../shared/core/arbitraries.ts';
import { COUNTS, SEED } from './counts.ts';
import { anyWork, costOfPeriod, expectFinite, reproducibly } from './runs.ts';

it('any legal scene runs in fixed steps, or trips for a reason', () => {
  fc.assert(
    fc.property(anyScene, anyWork, (scene, work) =>
      reproducibly(scene, () => {
        const { parameters: p } = scene;
        const seconds = Math.ceil(work / costOfPeriod(p)) / p.currentRate;
        const run = measureRun(scene, seconds, (record) => expectFinite(record, 'some tick'), batchSolver);
        const { rmsForce, peakCurrent, windingTemperature, energyIn } = run;
        expect(
          [rmsForce, peakCurrent, windingTemperature, energyIn].filter((each) => !Number.isFinite(each)),
        ).toEqual([]);
      }),
    ),
    { numRuns: COUNTS.scenes, seed: SEED },
  );
});
