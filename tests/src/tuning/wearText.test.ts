import { expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { PositioningTest } from '../../../shared/protocol/accuracy.ts';
import { changeText, frictionText } from '../../../src/tuning/wear/changeText.ts';
import { wearText } from '../../../src/tuning/wear/wearText.ts';

const scene = (id: string, changes: ParameterChanges) => {
  const found = present(SCENES.find((each) => each.id === id));
  return { ...found, parameters: { ...found.parameters, ...changes } };
};

it('tells years, preload and lost motion of a screw', () => {
  const text = wearText(
    scene('screw-backlash', {
      kilometresTravelled: 1e7,
      nutWear: 5e-13,
      nutPreload: 2e-6,
      backlash: 1e-6,
      guideDistance: 2e7,
    }),
  );
  expect(text).toMatch(/^10\u202f000 km are [\d.]+ years of this program, 8 h on 250 days a year\. /);
  expect(text).toContain('Nut: worn by 5.00 µm, 0 % of its preload left, lost motion 4.00 µm.');
  expect(text).toContain('Guide: 50 % of its preload left.');
});

it('counts years from the way of the program: 0.1 m/s for 8 h on 250 days are 720 km', () => {
  // A sine of amplitude A and frequency f goes 4 A f on average.
  const text = wearText(
    scene('mould-shuttle', {
      program: 'sine',
      sineAmplitude: 0.0125,
      sineFrequency: 2,
      kilometresTravelled: 1.44e6,
    }),
  );
  expect(text).toContain('1\u202f440 km are 2 years of this program');
});

it('names no nut where there is none, and no number of years where nothing moves', () => {
  const text = wearText(scene('mould-shuttle', { program: 'hold', kilometresTravelled: 1e6 }));
  expect(text).toContain('The present program stands still.');
  expect(text).toContain('No nut: between magnets and coils there is no contact');
});

const found = (reversal: number, repeatability: number) =>
  ({ figures: { reversal, repeatability } }) as PositioningTest;

it('says of a test only what its figures say', () => {
  expect(changeText(found(1e-6, 2e-6), found(4e-6, 2.1e-6))).toBe(
    'The reversal error grows from 1.00 µm to 4.00 µm, the bidirectional repeatability stays at 2.00 µm.',
  );
  expect(changeText(found(1e-6, 2e-6), found(0.5e-6, 1e-6))).toBe(
    'The reversal error falls from 1.00 µm to 500 nm, the bidirectional repeatability falls from 2.00 µm to 1.00 µm.',
  );
});

it('says that friction is why a worn machine reverses better, and nothing where it does not', () => {
  const { parameters: p } = scene('screw-backlash', {
    kilometresTravelled: 1e7,
    nutWear: 5e-13,
    nutPreload: 4e-6,
    backlash: 1e-6,
    nutDrag: 30,
    sealFriction: 10,
    guideDistance: 2e7,
    attraction: 0,
  });
  const text = frictionText(p, found(5e-6, 2e-6), found(3e-6, 2e-6));
  expect(text).toContain('at least 2.00 µm of it was friction when the machine was new');
  // 5 µm of wear against 4 µm of preload.
  expect(text).toContain('by more than the 1.00 µm that new lost motion adds');
  expect(frictionText(p, found(5e-6, 2e-6), found(6e-6, 2e-6))).toBe('');
  expect(frictionText({ ...p, kilometresTravelled: 0 }, found(5e-6, 2e-6), found(3e-6, 2e-6))).toBe('');
});
