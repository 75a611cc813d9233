import { describe, expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { hastened } from '../../benchmarks/lapse/bruteForce.ts';
import { DUTIES } from '../../benchmarks/lapse/duties.ts';
import { agreesWithFullModel, HASTE, withChanges } from './fullModel.ts';

const COOLED: Scene = withChanges(DUTIES.tubular, {
  cooling: true,
  coolantTemperature: 12,
  carrierToCoolant: 2.4,
  windingStart: 70,
  carrierStart: 50,
  // The draught of a moving coil takes a second to build up, whatever the haste: too long for a carrier that starts hot.
  speedCooling: 0,
});

for (const [name, duty] of Object.entries(DUTIES)) agreesWithFullModel(name, duty);
agreesWithFullModel('tubular, cooled, from hot', COOLED);

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
