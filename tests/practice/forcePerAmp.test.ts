import { describe, expect, it } from 'vitest';
import { at } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { Axis } from '../../workers/run/axis.ts';
import { CLASS, type Drive, duty, inTheLongRun, LIGHT_BRISK_JOB, WARM_JOB } from './duties.ts';

/*
 * Common practice, no source: the force per ampere of an iron core drops as the system heats, that of an ironless motor stays linear.
 *
 * Found: in part. Ironless force is linear in current, exactly, but it drops with the temperature of the magnets like any other. The
 * iron core drops more, because its carrier gets warmer, because its magnets follow the carrier further than those of the U-channel
 * preset, and because weaker magnets take more current, which saturates the iron more.
 */

interface Drop {
  /** What is lost of force per ampere in the long run, and what the magnets alone lose, as shares. */
  readonly force: number;
  readonly magnets: number;
  /** Of the carrier over the room, K. */
  readonly carrier: number;
}

function drop(drive: Drive, changes: ParameterChanges = {}): Drop {
  const scene = duty(WARM_JOB, drive, changes);
  const { magnetFollow, magnetTempCoefficient, ambient } = scene.parameters;
  const { carrier, forcePerAmp } = inTheLongRun(scene);
  const strength = (above: number) => 1 + magnetTempCoefficient * (ambient + magnetFollow * above - 20);
  return {
    force: 1 - forcePerAmp,
    magnets: 1 - strength(carrier - ambient) / strength(0),
    carrier: carrier - ambient,
  };
}

const found = Object.fromEntries(CLASS.map((drive) => [drive, drop(drive)])) as Record<Drive, Drop>;

describe('heat', () => {
  it('takes most force per ampere from the iron core', () => {
    const { flat, tubular, 'u-channel': uChannel } = found;
    expect(flat.force).toBeGreaterThan(1.5 * tubular.force);
    expect(tubular.force).toBeGreaterThan(1.5 * uChannel.force);
  });

  it.each(['tubular', 'u-channel'] as const)(
    'takes from the %s preset what its magnets lose, and that is not nothing',
    (drive) => {
      expect(found[drive].force).toBeGreaterThan(0.002);
      // The carrier counts while current flows, which is a little warmer than at the start of a cycle.
      expect(found[drive].force / found[drive].magnets).toBeCloseTo(1, 2);
    },
  );

  it('takes more from the iron core than its magnets lose, and no more once it does not saturate', () => {
    expect(found.flat.force / found.flat.magnets).toBeGreaterThan(1.04);
    const unsaturated = drop('flat', { saturationCurrent: 0 });
    expect(unsaturated.force / unsaturated.magnets).toBeCloseTo(1, 2);
  });

  it('reaches the carrier of the iron core most', () => {
    expect(found.flat.carrier).toBeGreaterThan(
      1.5 * Math.max(found.tubular.carrier, found['u-channel'].carrier),
    );
  });
});

describe('current, cold', () => {
  /** Force per ampere at the largest current of the duty over that at small ones, ripple left out. */
  function linearity(scene: Scene): number {
    const axis = new Axis(scene);
    let [largest, there, small, count] = [0, 0, 0, 0];
    for (let k = 0; k < 0.25 * scene.parameters.currentRate; k++) {
      if (!axis.step()) throw new Error(axis.trip?.kind);
      const current = at(axis.record, C.forceCurrent);
      const perAmp = at(axis.record, C.motorForce) / current;
      if (Math.abs(current) > largest) [largest, there] = [Math.abs(current), perAmp];
      if (Math.abs(current) > 0.05 && Math.abs(current) < 0.5) [small, count] = [small + perAmp, count + 1];
    }
    return there / (small / count);
  }
  const smooth = { ripple6: 0, ripple12: 0, magnetTempCoefficient: 0 };

  it.each(['tubular', 'u-channel'] as const)('gives force in proportion in the %s preset', (drive) => {
    expect(linearity(duty(LIGHT_BRISK_JOB, drive, smooth))).toBeCloseTo(1, 9);
  });

  it('gives less than that in the iron core, as far as it saturates', () => {
    expect(linearity(duty(LIGHT_BRISK_JOB, 'flat', smooth))).toBeLessThan(0.985);
    expect(linearity(duty(LIGHT_BRISK_JOB, 'flat', { ...smooth, saturationCurrent: 0 }))).toBeCloseTo(1, 9);
  });
});
