import { beforeAll, describe, expect, it } from 'vitest';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { Axis } from '../../../workers/axis.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { type Agreement, agreement } from '../../benchmarks/lapse/agreement.ts';
import { hastened } from '../../benchmarks/lapse/bruteForce.ts';
import { DUTIES } from '../../benchmarks/lapse/duties.ts';
import { present } from '../../tools/present.ts';

/*
 * The time-lapse against the full model run from end to end. With a hundredth of the heat capacities ten minutes become six seconds;
 * the tolerances are those asked of ten minutes (`npm run bench`), where there is less to be wrong about: temperature does not
 * swing within a cycle.
 */
const HASTE = 100;
const SECONDS = 6;

const withChanges = (scene: Scene, changes: ParameterChanges): Scene => ({
  ...scene,
  parameters: { ...scene.parameters, ...changes },
});

const CASES: Record<string, Scene> = {
  ...DUTIES,
  'tubular, cooled, from hot': withChanges(DUTIES.tubular, {
    cooling: true,
    coolantTemperature: 12,
    windingStart: 70,
    carrierStart: 50,
    // The draught of a moving coil takes a second to build up, whatever the haste: too long for a carrier that starts hot.
    speedCooling: 0,
  }),
};

describe.each(Object.entries(CASES))('%s', (_, scene) => {
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

describe('limits, against the full model', () => {
  const lapseOf = (scene: Scene) => timeLapse(scene, { hours: 12 / 3600, sampleEvery: 1 });

  it('trips by over-temperature in the same cycle', () => {
    const scene = withChanges(hastened(DUTIES.tubular, HASTE), {
      windingLimit: 36,
      foldbackTemperature: 35.999,
    });
    const axis = new Axis(scene);
    while (axis.step());
    const lapse = lapseOf(scene);
    expect(present(axis.trip).kind).toBe('over-temperature');
    expect(present(lapse.asSet.trip).kind).toBe('over-temperature');
    expect(present(axis.trip).time - present(lapse.asSet.trip).time).toBeGreaterThan(0);
    expect(present(axis.trip).time - present(lapse.asSet.trip).time).toBeLessThan(lapse.cycleTime);
    expect(lapse.duty.canDo).toBe(false);
  });

  it('finds when the amplifier folds back, and that the duty then fails', () => {
    const scene = withChanges(hastened(DUTIES.tubular, HASTE), {
      continuousCurrent: 3,
      peakCurrent: 12,
      overloadTime: 1,
    });
    const axis = new Axis(scene);
    let foldback = Number.NaN;
    while (axis.step()) {
      if (Number.isNaN(foldback) && axis.notices.includes('overload')) foldback = axis.time;
    }
    const { asSet, cycleTime, duty } = lapseOf(scene);
    expect(Math.abs(present(asSet.overloadTime) - foldback)).toBeLessThan(cycleTime);
    expect(present(asSet.trip).kind).toBe(present(axis.trip).kind);
    expect(Math.abs(present(asSet.trip).time - present(axis.trip).time)).toBeLessThan(cycleTime);
    expect(duty.rmsCurrent).toBeGreaterThan(duty.continuousCurrent);
    expect(duty.canDo).toBe(false);
  });
});

describe('refreshing', () => {
  it('measures again as resistance moves, and a coarse refresh changes little', () => {
    const hot = withChanges(DUTIES.tubular, { windingStart: 90, carrierStart: 60 });
    const at = (refreshFraction: number) => timeLapse(hot, { hours: 1, refreshFraction });
    const [fine, coarse] = [at(0.02), at(0.5)];
    expect(coarse.measurements).toBe(1);
    expect(fine.measurements).toBeGreaterThan(3);
    const [a, b] = [present(fine.asSet.samples.at(-1)), present(coarse.asSet.samples.at(-1))];
    expect(Math.abs(a.winding - b.winding)).toBeLessThan(0.1);
    expect(Math.abs(a.forcePerAmp - b.forcePerAmp)).toBeLessThan(1e-4);
  });
});
