import { describe, expect, it } from 'vitest';
import { type Drive, duty, inTheLongRun, LIGHT_BRISK_JOB } from './duties.ts';

/*
 * Common practice, no source: an exposed coil cools better than a buried one.
 *
 * Found: holds. The presets state it (conductances and speedCooling are theirs, and invented); the model turns it into kelvins per watt of
 * copper loss, and the motion makes it larger. It is also what pays for the poorer motor constant of the tubular preset.
 */

/** Rise of the winding over the room per watt of copper loss, K/W. */
function kelvinsPerWatt(drive: Drive, changes: { speedCooling?: number } = {}): number {
  const scene = duty(LIGHT_BRISK_JOB, drive, changes);
  const { winding, copper } = inTheLongRun(scene);
  return (winding - scene.parameters.ambient) / copper;
}

const moving = { tubular: kelvinsPerWatt('tubular'), uChannel: kelvinsPerWatt('u-channel') };
const inStillAir = {
  tubular: kelvinsPerWatt('tubular', { speedCooling: 0 }),
  uChannel: kelvinsPerWatt('u-channel', { speedCooling: 0 }),
};

describe('the exposed coil of the tubular preset', () => {
  it('warms by less than half as much for a watt as the buried one of the U-channel preset', () => {
    expect(moving.tubular).toBeLessThan(0.5 * moving.uChannel);
  });

  it('gains from its motion, the buried one hardly', () => {
    expect(moving.tubular / inStillAir.tubular).toBeLessThan(0.8);
    expect(moving.uChannel / inStillAir.uChannel).toBeGreaterThan(0.95);
  });

  it('is cooler in still air as well, by its conductances alone', () => {
    expect(inStillAir.tubular).toBeLessThan(0.65 * inStillAir.uChannel);
  });

  it('gets about as warm as the buried one with two and a half times its loss', () => {
    const [exposed, buried] = (['tubular', 'u-channel'] as const).map((drive) =>
      inTheLongRun(duty(LIGHT_BRISK_JOB, drive)),
    ) as [ReturnType<typeof inTheLongRun>, ReturnType<typeof inTheLongRun>];
    expect(exposed.copper / buried.copper).toBeGreaterThan(2.3);
    expect(Math.abs(exposed.winding - buried.winding)).toBeLessThan(2);
  });
});
