import { describe, expect, it } from 'vitest';
import { VerticalScale } from '../../../src/plot/strip/verticalScale.ts';
import { random } from '../history/frames.ts';

const TEXT = 14;
const ERROR = { minSpan: 2e-9, zero: true };

describe('vertical scale', () => {
  it('holds its data, at least two ticks, and not much empty room', () => {
    const next = random(11);
    for (let i = 0; i < 2000; i++) {
      const size = 10 ** (12 * next() - 9);
      const low = size * (next() - 0.7);
      const high = low + size * next();
      const height = 30 + 200 * next();
      const scale = new VerticalScale({ minSpan: 1e-12, zero: next() > 0.5 });
      scale.fit(low, high, height, TEXT);
      expect(scale.low).toBeLessThanOrEqual(low);
      expect(scale.high).toBeGreaterThanOrEqual(high);
      const ticks = Math.floor(scale.high / scale.step + 1e-6) - Math.ceil(scale.low / scale.step - 1e-6) + 1;
      expect(ticks).toBeGreaterThanOrEqual(2);
      // On a low chart the step may have to shrink from 5 to 2 to get the second tick: five at
      // most.
      expect(ticks).toBeLessThanOrEqual(Math.max(5, 1 + height / TEXT));
    }
  });

  it('leaves at most a third of the height unused beyond data and zero', () => {
    const next = random(12);
    for (let i = 0; i < 500; i++) {
      const scale = new VerticalScale({ minSpan: 1e-12, zero: false });
      const low = next() - 0.5;
      const high = low + 0.01 + next();
      scale.fit(low, high, 100, TEXT);
      expect((high - low) / (scale.high - scale.low)).toBeGreaterThan(0.66);
    }
  });

  it('opens at once for a spike and closes in again after it', () => {
    const scale = new VerticalScale(ERROR);
    scale.fit(-1e-6, 1e-6, 100, TEXT);
    const calm = scale.high;
    expect(scale.fit(-1e-6, 3e-5, 100, TEXT)).toBe(true);
    expect(scale.high).toBeGreaterThanOrEqual(3e-5);
    expect(scale.fit(-1e-6, 1e-6, 100, TEXT)).toBe(true);
    expect(scale.high).toBe(calm);
  });

  it('does not flicker with noise about any level', () => {
    const next = random(13);
    for (let trial = 0; trial < 50; trial++) {
      const scale = new VerticalScale(ERROR);
      const size = 10 ** (-9 + 6 * next());
      let late = 0;
      for (let i = 0; i < 400; i++) {
        const before = scale.high - scale.low;
        const changed = scale.fit(-size * (1 - 0.25 * next()), size * (1 - 0.25 * next()), 60, TEXT);
        // It opens until it has seen about the largest swing and never closes in.
        if (i > 0) expect(scale.high - scale.low).toBeGreaterThanOrEqual(before);
        if (changed && i >= 100) late++;
      }
      expect(late).toBeLessThanOrEqual(1);
    }
  });

  it('lets go of a range that the data have left', () => {
    const scale = new VerticalScale({ minSpan: 4e-9, zero: false });
    for (let x = -0.1; x < 0.1; x += 1e-3) scale.fit(x, x + 1e-3, 100, TEXT);
    expect(scale.high - scale.low).toBeLessThan(4e-3);
  });

  it('shows nothing moving as nothing moving', () => {
    const scale = new VerticalScale({ minSpan: 4e-9, zero: false });
    scale.fit(0.3, 0.3 + 1e-12, 60, TEXT);
    expect(scale.high - scale.low).toBeGreaterThanOrEqual(4e-9);
    expect(scale.high - scale.low).toBeLessThan(1e-8);
  });
});
