import { describe, expect, it } from 'vitest';
import { motorConstants } from '../../shared/axis/motor.ts';
import { unitLength } from '../../shared/axis/motorSize.ts';
import { loadSideMass, motorSideMass } from '../../shared/core/movedMass.ts';
import type { Scene } from '../../shared/core/scene.ts';
import {
  CLASS,
  type Conversion,
  conversion,
  DEFAULT_JOB,
  type Drive,
  duty,
  LIGHT_BRISK_JOB,
} from './duties.ts';

/*
 * Common practice, no source: at comparable size a tubular motor turns electrical into mechanical energy about 50 % more efficiently than
 * a U-channel motor, and a U-channel motor more than a flat iron-core one, on light, brisk duty.
 *
 * Found: between presets of equal continuous force the first half does not hold, the second does; at equal length of the coil unit the tubular
 * motor has half as much again of the square of the motor constant as the U-channel motor, and the first half holds.
 */

const JOBS = { default: DEFAULT_JOB, 'light and brisk': LIGHT_BRISK_JOB };
type Name = keyof typeof JOBS;

const found = Object.fromEntries(
  Object.entries(JOBS).map(([name, job]) => [
    name,
    Object.fromEntries(CLASS.map((drive) => [drive, conversion(duty(job, drive))])),
  ]),
) as Record<Name, Record<Drive, Conversion>>;

const net = ({ drawn, returned }: Conversion) => drawn - returned;

/** Copper loss of a rigid mass that is sped up and slowed down, per a² t: P_cu = (M a/K_m)². */
function costOfSpeedingUp({ parameters: p }: Scene): number {
  return ((motorSideMass(p) + loadSideMass(p)) / motorConstants(p).motorConstant) ** 2;
}

describe.each(Object.keys(JOBS) as Name[])('on the %s duty', (name) => {
  const { tubular, flat, 'u-channel': uChannel } = found[name];

  it('the U-channel preset converts better than the flat one', () => {
    expect(uChannel.efficiency).toBeGreaterThan(flat.efficiency);
    expect(net(uChannel)).toBeLessThan(net(flat));
  });

  it('the U-channel preset converts better than the tubular one, against the statement', () => {
    expect(uChannel.efficiency).toBeGreaterThan(tubular.efficiency);
    expect(net(uChannel)).toBeLessThan(net(tubular));
  });

  it('the flat preset takes less energy than the tubular one, for its motor constant', () => {
    expect(net(flat)).toBeLessThan(net(tubular));
    expect(flat.copper).toBeLessThan(tubular.copper / 2);
  });
});

describe('why', () => {
  it.each(Object.keys(JOBS) as Name[])(
    'ironless copper losses stand as (M/K_m)² on the %s duty, where guides are the same',
    (name) => {
      const [tubular, uChannel] = (['tubular', 'u-channel'] as const).map((drive) =>
        costOfSpeedingUp(duty(JOBS[name], drive)),
      ) as [number, number];
      const measured = found[name].tubular.copper / found[name]['u-channel'].copper;
      // Friction takes current too.
      expect(Math.abs(measured / (tubular / uChannel) - 1)).toBeLessThan(0.02);
    },
  );

  it('a tubular motor with the winding that its mass asks for converts as well as the U-channel preset', () => {
    const uChannel = costOfSpeedingUp(duty(LIGHT_BRISK_JOB, 'u-channel'));
    const plain = duty(LIGHT_BRISK_JOB, 'tubular');
    const resistance = (plain.parameters.resistance * uChannel) / costOfSpeedingUp(plain);
    const better = conversion(duty(LIGHT_BRISK_JOB, 'tubular', { resistance }));
    expect(Math.abs(better.copper / found['light and brisk']['u-channel'].copper - 1)).toBeLessThan(0.03);
    expect(better.efficiency).toBeGreaterThan(found['light and brisk']['u-channel'].efficiency - 0.01);
  });

  it('the flat preset also pays for its iron: guide under attraction, and drag', () => {
    const light = found['light and brisk'];
    const ironless = conversion(
      duty(LIGHT_BRISK_JOB, 'flat', { attraction: 0, eddyDrag: 0, hysteresisDrag: 0 }),
    );
    expect(ironless.iron).toBe(0);
    expect(Math.abs(ironless.guide / light.tubular.guide - 1)).toBeLessThan(0.05);
    expect(ironless.efficiency).toBeGreaterThan(light.flat.efficiency);
    // Without them it would convert better than the U-channel preset.
    expect(ironless.efficiency).toBeGreaterThan(light['u-channel'].efficiency);
  });
});

describe('between a tubular and a U-channel motor', () => {
  const [tubular, uChannel] = (['tubular', 'u-channel'] as const).map((drive) => {
    const { parameters: p } = duty(DEFAULT_JOB, drive);
    return { square: motorConstants(p).motorConstant ** 2, length: unitLength(drive, p) };
  }) as [{ square: number; length: number }, { square: number; length: number }];

  it('the square of the motor constant stands at 1.5 for equal length of the coil unit, the statement', () => {
    const ratio = tubular.square / tubular.length / (uChannel.square / uChannel.length);
    expect(ratio).toBeGreaterThan(1.4);
    expect(ratio).toBeLessThan(1.7);
  });

  it('and at 0.6 for equal continuous force', () => {
    expect(tubular.square / uChannel.square).toBeCloseTo(0.61, 2);
  });
});
