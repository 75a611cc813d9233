import { describe, expect, it } from 'vitest';
import { Waves } from '../../../workers/model/waves.ts';

const LIST = [
  { amplitude: 3, rate: 785, phase: 0.4 },
  { amplitude: -0.7, rate: 2094, phase: -1.2 },
];
/** Sums of Math.sin and Math.cos, as the definition has them. */
const sum = (x: number) =>
  LIST.reduce((s, { amplitude, rate, phase }) => s + amplitude * Math.sin(rate * x + phase), 0);
const integral = (x: number) =>
  LIST.reduce((s, { amplitude, rate, phase }) => s - (amplitude / rate) * Math.cos(rate * x + phase), 0);

describe('waves along the axis', () => {
  it('are those of Math.sin and Math.cos to rounding, near an anchor and far from it', () => {
    const waves = new Waves(LIST);
    waves.follow(0.123);
    for (const far of [0, 1e-9, -3e-6, 2e-5, -4.7e-5, 5e-5, -1e-3, 0.2]) {
      const x = 0.123 + far;
      expect(Math.abs(waves.at(x) - sum(x))).toBeLessThan(1e-12);
      expect(Math.abs(waves.integral(x) - integral(x))).toBeLessThan(1e-15);
    }
  });

  it('follow an axis, and asking leaves the anchor where it is', () => {
    const [followed, asked] = [new Waves(LIST), new Waves(LIST)];
    for (let x = 0; x < 0.01; x += 7e-6) {
      followed.follow(x);
      asked.follow(x);
      asked.at(x + 1);
      asked.integral(x - 1e-5);
      expect(asked.at(x + 1e-6)).toBe(followed.at(x + 1e-6));
      expect(Math.abs(followed.at(x) - sum(x))).toBeLessThan(1e-12);
    }
  });

  it('are nothing where there are none, and right without an anchor', () => {
    expect(new Waves().at(0.1)).toBe(0);
    expect(new Waves().integral(0.1)).toBeCloseTo(0, 15);
    expect(new Waves(LIST).at(0.1)).toBeCloseTo(sum(0.1), 12);
  });
});
