import { describe, expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { Axis } from '../../../workers/run/axis.ts';

/** A scan over open magnets, and what the motor worked. */
function run(changes: ParameterChanges, seconds = 0.3) {
  const scene = sceneById('mould-shuttle');
  const parameters = { ...scene.parameters, followingErrorLimit: 0.05, ...changes };
  const axis = new Axis({ ...scene, parameters });
  while (axis.time < seconds && axis.step());
  return axis;
}

const POURED = { chipCount: 200, chipSize: 2e-3 } as const;

describe('chips on open magnets', () => {
  it('brake the unit that meets them, their work is heat in the account, and the account balances', () => {
    const [clean, poured] = [run({}), run(POURED)];
    expect(poured.trip).toBeNull();
    const { from, to } = present(poured.chips);
    expect(to).toBeGreaterThan(from);
    expect(poured.audit.other).toBeGreaterThan(clean.audit.other + 0.01);
    expect(poured.audit.in).toBeGreaterThan(clean.audit.in);
    expect(poured.audit.holds).toBe(true);
  });

  it('do nothing under a cover: every figure is that of a clean machine', () => {
    const [clean, covered] = [run({}), run({ ...POURED, cover: true })];
    expect(covered.record).toEqual(clean.record);
    expect(covered.chips).toBeNull();
  });

  it('lie where they lay when the same run is repeated', () => {
    const [one, other] = [run(POURED, 0.1), run(POURED, 0.1)];
    expect(other.record).toEqual(one.record);
    expect(other.chips).toEqual(one.chips);
  });

  it('are pushed only where the unit has not been: the same way again costs nothing', () => {
    const axis = run({ ...POURED, chipSize: 5e-3 }, 0);
    const workUntil = (time: number) => {
      while (axis.time < time) axis.step();
      return axis.audit.other;
    };
    const first = workUntil(1);
    expect(first).toBeGreaterThan(0.01);
    expect(workUntil(2) - first).toBeLessThan(0.01 * first);
  });
});
