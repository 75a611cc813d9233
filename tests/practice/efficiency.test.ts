import { describe, expect, it } from 'vitest';
import { motorConstants } from '../../shared/axis/motor.ts';
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
 * Found: the first half does not hold for the presets of this catalogue, the second does.
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

  it('the tubular preset takes less energy than the flat one', () => {
    expect(net(tubular)).toBeLessThan(net(flat));
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
    // Its mass remains: it still loses more than the U-channel preset.
    expect(ironless.copper).toBeGreaterThan(2 * light['u-channel'].copper);
  });
});
