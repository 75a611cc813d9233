import { beforeAll, describe, expect, it } from 'vitest';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { seeded } from '../../../shared/core/seeded.ts';
import type { FitResult, FittedName } from '../../../shared/protocol/fit.ts';
import { fitTrace } from '../../../workers/identify/fitModel.ts';
import {
  Coverage,
  ENOUGH_FOR_SPREAD,
  type Extent,
  guessOf,
  recordedTrace,
  sceneWith,
  truthsOf,
  withSensorNoise,
} from './trials.ts';

/*
 * Seeded runs of a shuttle of 0.45 s, each on another axis, exported and fitted from a wrong guess. Encoder noise 20 nm
 * rms in the loop; 0.03 A rms on the current record (1 % of a usual one) and 5 nm on the motor's position, as a
 * measured trace has them (common practice, no source).
 */

interface Trial {
  readonly p: Parameters;
  readonly byForce: FitResult;
  readonly byMass: FitResult;
}

function trial(seed: number): Trial {
  const uniform = seeded(seed);
  const about = (value: number) => value * (0.8 + 0.4 * uniform());
  const { parameters } = sceneWith('mould-shuttle', {});
  const scene = sceneWith('mould-shuttle', {
    seed,
    dwell: 0.02,
    encoderNoise: 2e-8,
    payload: about(parameters.payload),
    sealFriction: about(parameters.sealFriction),
    sealStiction: 1.3 * parameters.sealStiction,
    viscous: about(parameters.viscous),
    linkStiffness: about(parameters.linkStiffness),
    ripple6Phase: 2 * Math.PI * (uniform() - 0.5),
    inclination: 0.2 * (uniform() - 0.5),
  });
  const p = scene.parameters;
  const trace = withSensorNoise(recordedTrace(scene, 0.45), 0.03, 5e-9, seed + 1000);
  const mass = truthsOf(p).mass;
  return {
    p,
    byForce: fitTrace(trace, guessOf(p)),
    byMass: fitTrace(trace, guessOf(p), { known: { kind: 'mass', mass } }),
  };
}

export function recoveriesFromMoves({ trials, minInside }: Extent): void {
  let fits: Trial[];
  beforeAll(() => {
    fits = Array.from({ length: trials }, (_, k) => trial(k + 1));
  });

  const coverageOf = (name: FittedName, by: 'byForce' | 'byMass') =>
    Coverage.of(
      fits.map(({ p, [by]: fit }) => ({ fit, truth: truthsOf(p)[name] })),
      name,
    );

  describe('from a move, with the force constant known', () => {
    it.each<[FittedName, number]>([
      ['mass', 0.06],
      ['coulomb', 0.4],
      ['viscous', 0.5],
      ['bias', 0.3],
      ['linkStiffness', 2.5e6],
      ['delay', 25e-6],
    ])('%s lies in its interval', (name, widest) => {
      const coverage = coverageOf(name, 'byForce');
      expect(coverage.trials).toHaveLength(trials);
      expect(coverage.inside).toBeGreaterThanOrEqual(minInside);
      expect(coverage.insideScatter).toBeGreaterThanOrEqual(minInside);
      expect(coverage.medianHalf).toBeLessThan(widest);
      if (trials >= ENOUGH_FOR_SPREAD) expect(coverage.honesty).toBeLessThan(2);
    });
  });

  describe('from a move, with the mass known', () => {
    it.each<[FittedName, number]>([
      ['forceConstant', 0.25],
      ['coulomb', 0.4],
      ['viscous', 0.5],
    ])('%s lies in its interval', (name, widest) => {
      const coverage = coverageOf(name, 'byMass');
      expect(coverage.trials).toHaveLength(trials);
      expect(coverage.inside).toBeGreaterThanOrEqual(minInside);
      expect(coverage.medianHalf).toBeLessThan(widest);
    });
  });
}
