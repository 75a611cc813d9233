import { beforeAll, expect, it } from 'vitest';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { seeded } from '../../../shared/core/seeded.ts';
import type { FittedName } from '../../../shared/protocol/fit.ts';
import { fitTrace } from '../../../workers/identify/fitModel.ts';
import {
  Coverage,
  type Extent,
  guessOf,
  recordedTrace,
  sceneWith,
  truthsOf,
  withSensorNoise,
} from './trials.ts';

const MOVE: ParameterChanges = {
  stroke: 0.1,
  start: -0.05,
  speed: 0.5,
  acceleration: 6,
  jerk: 300,
  dwell: 0.02,
};

/**
 * Shuttles of a screw with lost motion, encoder on the motor, from a guess that has twice the stiffness and a third of
 * the lost motion.
 */
export function recoveriesOfScrews({ trials, minInside }: Extent): void {
  let results: { fit: ReturnType<typeof fitTrace>; truths: ReturnType<typeof truthsOf> }[];
  beforeAll(() => {
    results = Array.from({ length: trials }, (_, k) => {
      const seed = k + 1;
      const uniform = seeded(seed);
      const scene = sceneWith('screw-backlash', {
        ...MOVE,
        seed,
        backlash: 2e-6 + 3e-6 * uniform(),
        linkStiffness: 1.6e8 * (0.7 + 0.6 * uniform()),
        payload: 2 + 4 * uniform(),
      });
      const p = scene.parameters;
      const trace = withSensorNoise(recordedTrace(scene, 0.55), 0.02, 1e-8, seed + 1000);
      return { fit: fitTrace(trace, { ...guessOf(p), backlash: p.backlash / 3 }), truths: truthsOf(p) };
    });
  });

  it.each<[FittedName, number]>([
    ['mass', 0.1],
    ['coulomb', 0.6],
    ['viscous', 1.5],
    ['linkStiffness', 2e7],
    ['backlash', 2e-7],
  ])('of a screw with lost motion, %s lies in its interval', (name, widest) => {
    const coverage = Coverage.of(
      results.map(({ fit, truths }) => ({ fit, truth: truths[name] })),
      name,
    );
    expect(coverage.trials).toHaveLength(trials);
    expect(coverage.inside).toBeGreaterThanOrEqual(minInside);
    expect(coverage.medianHalf).toBeLessThan(widest);
  });
}
