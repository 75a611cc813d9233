import { describe, expect, it } from 'vitest';
import { ALUMINIUM, motorSize, tubularSize } from '../../../shared/axis/motorSize.ts';
import { present } from '../../../shared/core/at.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { DRIVE_TYPES } from '../../../shared/core/scene.ts';
import { layout } from '../../../src/stage/build/layout.ts';
import { payloadSize, plateSize, railWidth } from '../../../src/stage/build/sizes.ts';

const volume = ({ length, height, width }: { length: number; height: number; width: number }) =>
  length * height * width;

describe('the mould carrier', () => {
  it.each([0.01, 0.5, 5, 60, 2000])('of %d kg weighs that in steel of 7850 kg/m³', (mass) => {
    expect(volume(present(payloadSize(mass))) * 7850).toBeCloseTo(mass, 9);
  });

  it('grows by the cube root: eight times the mass is twice as long', () => {
    expect(present(payloadSize(8)).length / present(payloadSize(1)).length).toBeCloseTo(2, 12);
  });

  it('is not there without payload', () => {
    expect(payloadSize(0)).toBeNull();
  });
});

describe('the table plate', () => {
  it('keeps its mass when it has to be longer', () => {
    const free = plateSize(8, 0, 0);
    const long = plateSize(8, 2 * free.length, 0);
    expect(long.length).toBeCloseTo(2 * free.length, 12);
    expect(volume(long)).toBeCloseTo(volume(free), 12);
    expect(volume(free) * ALUMINIUM).toBeLessThan(8);
  });
});

describe('the motors', () => {
  const p = defaultParameters();

  it('have coil units of whole poles at the true pole pitch', () => {
    for (const polePitch of [0.016, 0.024, 0.03, 0.06]) {
      const { length, coils, coilPitch } = tubularSize({ ...p, polePitch });
      expect(length / polePitch).toBeCloseTo(Math.round(length / polePitch), 9);
      expect(coils * coilPitch).toBeCloseTo(length, 12);
      expect(coilPitch).toBeCloseTo(polePitch / 3, 12);
    }
  });

  it('need larger rails for more mass', () => {
    expect(railWidth(300)).toBeGreaterThan(railWidth(12));
  });

  it.each(DRIVE_TYPES)('keep apart from the table and reach over the whole travel: %s', (driveType) => {
    const drive = driveType === 'screw' ? { ...p, lead: 0.01 } : p;
    for (const motorCount of [1, 2, 3, 4]) {
      const plan = layout(driveType, { ...drive, motorCount });
      expect(plan.units).toHaveLength(motorCount);
      const reach = plan.plate.length / 2;
      expect(plan.from).toBeLessThan(p.travelMin - reach);
      expect(plan.to).toBeGreaterThan(p.travelMax + reach);
      for (const { x } of plan.units)
        expect(p.travelMin + x - motorSize(driveType, drive).length / 2).toBeGreaterThan(plan.from);
      expect(plan.base.xMin).toBeLessThan(plan.from);
      expect(plan.base.xMax).toBeGreaterThan(plan.to);
      expect(plan.plateBottom).toBeGreaterThanOrEqual(plan.rail.top - 1e-12);
      expect(plan.driveHeight).toBeGreaterThanOrEqual(0);
      for (const z of plan.tracks) {
        expect(z).toBeGreaterThan(plan.base.zMin);
        expect(z).toBeLessThan(plan.base.zMax);
      }
    }
  });

  it('stand whole pole pairs apart on one track, the misalignment on top at its true size', () => {
    const { units, motor } = layout('tubular', { ...p, motorCount: 3, misalignment2: 0.0021 });
    const [first, second] = units as [(typeof units)[0], (typeof units)[0]];
    expect(first.track).toBe(second.track);
    const pairs = (second.x - first.x - 0.0021) / (2 * p.polePitch);
    expect(pairs).toBeCloseTo(Math.round(pairs), 9);
    expect(second.x - first.x).toBeGreaterThan(motor.length);
  });
});
