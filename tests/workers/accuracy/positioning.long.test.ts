import { expect, it } from 'vitest';
import { positioning } from '../../../workers/accuracy/positioning.ts';
import { wearTest } from '../../../workers/accuracy/wearTest.ts';
import { found, jobOf, SCREW, tunedScene } from './bench.ts';

// The loop stands where the encoder says, the table that friction holds half the lost motion behind, from either side. Friction winds
// up the link behind it by no more than its force over the stiffness. A stiff loop and slow moves: a motor that overshoots, or a table
// that friction does not stop by itself, would take up some of the lost motion.
it('finds lost motion behind an encoder on the motor, and what wear adds to it, as reversal error', () => {
  const backlash = 7e-6;
  const [sealFriction, linkStiffness] = [5, 1.2e8];
  const scene = tunedScene(100, {
    ...SCREW,
    travelMin: -0.011,
    travelMax: 0.011,
    backlash,
    linkStiffness,
    sealFriction,
    sealStiction: sealFriction,
    acceleration: 0.2,
    jerk: 10,
    window: 1e-8,
  });
  const short = jobOf({ travel: 0.02, wear: 3e-6 });
  const { figures } = positioning(scene, short, 'worn');
  expect(figures.meanReversal).toBeLessThan(0);
  const error = figures.reversal - (backlash + short.values.wear);
  expect(Math.abs(error)).toBeLessThan((2 * sealFriction) / linkStiffness);
});

// The same law as above, through the kilometres of the machine: 10 000 km at 0.5 nm/km, of which 2 µm use up the preload.
it('finds the wear of the kilometres in the worn machine, and the new one as it was', () => {
  const scene = tunedScene(100, {
    ...SCREW,
    travelMin: -0.011,
    travelMax: 0.011,
    linkStiffness: 1.2e8,
    sealFriction: 5,
    sealStiction: 5,
    guideDistance: 0,
    acceleration: 0.2,
    jerk: 10,
    window: 1e-8,
    nutWear: 5e-13,
    nutPreload: 2e-6,
    kilometresTravelled: 1e7,
  });
  const { fresh, worn } = wearTest(scene);
  const wound = (2 * 5) / 1.2e8;
  expect(found(fresh).figures.reversal).toBeLessThan(2 * wound);
  expect(Math.abs(found(worn).figures.reversal - 3e-6)).toBeLessThan(2 * wound);
  expect(found(worn).figures.repeatability).toBeGreaterThan(found(fresh).figures.repeatability + 2e-6);
});
