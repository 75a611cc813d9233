import { beforeAll, describe, expect, it } from 'vitest';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { type Agreement, agreement } from '../../benchmarks/lapse/agreement.ts';
import { hastened } from '../../benchmarks/lapse/bruteForce.ts';

/*
 * The time-lapse against the full model run from end to end. With a hundredth of the heat capacities ten minutes become six seconds;
 * the tolerances are those asked of ten minutes (`npm run bench`), where there is less to be wrong about: temperature does not
 * swing within a cycle.
 */
export const HASTE = 100;
const SECONDS = 6;

export const withChanges = (scene: Scene, changes: ParameterChanges): Scene => ({
  ...scene,
  parameters: { ...scene.parameters, ...changes },
});

export function agreesWithFullModel(name: string, scene: Scene): void {
  describe(name, () => {
    let found: Agreement;
    beforeAll(() => {
      found = agreement(hastened(scene, HASTE), SECONDS, 0.5);
    });

    it('warms enough to be compared', () => {
      expect(found.rise).toBeGreaterThan(5);
      expect(Math.abs(found.growth[0])).toBeGreaterThan(5e-7);
    });

    it('agrees with the full model in all four temperatures within 0.5 K', () => {
      expect(found.kelvin).toBeLessThan(0.5);
    });

    it('agrees in the drift of force per ampere within 1 % of it', () => {
      const [full, lapse] = found.drift;
      expect(full).toBeLessThan(0);
      expect(Math.abs(lapse / full - 1)).toBeLessThan(0.01);
    });

    it('agrees in the growth at the tool within 1 % of it', () => {
      const [full, lapse] = found.growth;
      expect(Math.abs(lapse / full - 1)).toBeLessThan(0.01);
    });
  });
}
