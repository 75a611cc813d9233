import { expect, it } from 'vitest';
import { seeded } from '../../../shared/core/seeded.ts';
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

/**
 * Sweeps of 0.3 s at standstill over the resonance of the link, each on another axis, fitted from twice the stiffness
 * and a wrong mass.
 */
export function recoveriesFromSweeps({ trials, minInside }: Extent): void {
  it('from a sweep, the stiffness between motor and table lies in its interval', () => {
    const results = Array.from({ length: trials }, (_, k) => {
      const seed = k + 1;
      const uniform = seeded(seed);
      const scene = sceneWith('mould-shuttle', {
        seed,
        program: 'chirp',
        sweepForce: 20 + 40 * uniform(),
        sweepFrom: 20,
        sweepTo: 2500,
        sweepTime: 0.3,
        dwell: 0.02,
        encoderNoise: 2e-9,
        linkStiffness: 1.5e8 * (0.6 + 0.8 * uniform()),
        linkDamping: 1500 * (0.6 + 0.8 * uniform()),
        payload: 2 + 4 * uniform(),
      });
      const p = scene.parameters;
      const trace = withSensorNoise(recordedTrace(scene, 0.33), 0.01, 0, seed + 1000);
      // The positions on both sides would give it away.
      const fit = fitTrace({ ...trace, motorPosition: null, tablePosition: null }, guessOf(p));
      return { fit, truth: p.linkStiffness, delay: truthsOf(p).delay };
    });
    const stiffness = Coverage.of(results, 'linkStiffness');
    expect(stiffness.trials).toHaveLength(trials);
    expect(stiffness.inside).toBeGreaterThanOrEqual(minInside);
    expect(stiffness.medianHalf).toBeLessThan(0.02 * 1.5e8);
    const delay = Coverage.of(
      results.map(({ fit, delay: truth }) => ({ fit, truth })),
      'delay',
    );
    expect(delay.inside).toBeGreaterThanOrEqual(minInside);
    expect(delay.medianHalf).toBeLessThan(20e-6);
  });
}
