import { expect, it } from 'vitest';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { shapingText } from '../../../src/tuning/shapingNote.ts';

const p = { ...defaultParameters(), acceleration: 10, jerk: 500 };

it('says that nothing is shaped, and the jerk time a/j', () => {
  expect(shapingText(p)).toBe(
    'Third-order profile, acceleration reached in 20.0 ms. No shaping: moves take no longer than their limits require.',
  );
});

it('says what each stage costs and what the shaper is worth beside its frequency', () => {
  const shaped = { ...p, jerkRamp: 0.01, shaper: 'ZV', shaperFrequency: 25, shaperDamping: 0 } as const;
  // An undamped resonance 10 % off keeps |cos(0.45 π)| = 15.6 % of its vibration after a ZV shaper.
  expect(shapingText(shaped)).toBe(
    'Fourth-order profile, acceleration reached in 30.0 ms. ' +
      'Each move takes 30.0 ms longer: jerk ramp 10.0 ms, input shaper 20.0 ms. ' +
      'A resonance 10 % off its frequency keeps 16 % of its vibration.',
  );
});
