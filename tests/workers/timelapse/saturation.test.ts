import { expect, it } from 'vitest';
import { SaturationTally } from '../../../workers/timelapse/saturationTally.ts';

it('saturation steepens what weaker magnets cost: closed form of a constant force', () => {
  // F = m i/√(1 + (i/i_sat)²), so i = F/√(m² − (F/i_sat)²) and −d ln i/d ln m = m²/(m² − (F/i_sat)²).
  const [saturationCurrent, force] = [30, 18];
  const current = force / Math.sqrt(1 - (force / saturationCurrent) ** 2);
  const tally = new SaturationTally(saturationCurrent);
  for (let k = 0; k < 5; k++) tally.add(k % 2 === 0 ? current : -current);
  expect(tally.fluxExponent).toBeCloseTo(1 / (1 - (force / saturationCurrent) ** 2), 12);
});

it('a motor that does not saturate, or carries no current, loses as its magnets do', () => {
  const linear = new SaturationTally(0);
  linear.add(12);
  expect(linear.fluxExponent).toBe(1);
  const idle = new SaturationTally(30);
  idle.add(0);
  expect(idle.fluxExponent).toBe(1);
});
