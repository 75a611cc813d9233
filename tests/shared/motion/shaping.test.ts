import { describe, expect, it } from 'vitest';
import {
  residualVibration,
  type Shaping,
  shaperImpulses,
  shapingTimes,
} from '../../../shared/motion/shaping.ts';

function shaping(changes: Partial<Shaping>): Shaping {
  return {
    jerkRamp: 0,
    shaper: 'none',
    shaperFrequency: 10,
    shaperDamping: 0,
    setpointFilter: 0,
    ...changes,
  };
}

/** Residual vibration of a shaper at `ratio` times the frequency it was made for. */
function residual(changes: Partial<Shaping>, ratio: number): number {
  const p = shaping(changes);
  return residualVibration(shaperImpulses(p), 2 * Math.PI * p.shaperFrequency * ratio, p.shaperDamping);
}

describe('impulses of an input shaper', () => {
  // Singer and Seering (1990): K = exp(−π D/√(1 − D²)), shares 1/(1 + K) and K/(1 + K), half a damped period apart.
  it('ZV: two impulses, as published', () => {
    const D = 0.1;
    const K = Math.exp((-Math.PI * D) / Math.sqrt(1 - D * D));
    const [first, second, ...others] = shaperImpulses(shaping({ shaper: 'ZV', shaperDamping: D }));
    expect(first!.share).toBeCloseTo(1 / (1 + K), 14);
    expect(second!.share).toBeCloseTo(K / (1 + K), 14);
    expect(first!.delay).toBe(0);
    expect(second!.delay).toBeCloseTo(0.05 / Math.sqrt(1 - D * D), 14);
    expect(others).toEqual([]);
  });

  it('ZVD and ZVDD of an undamped resonance: binomial shares', () => {
    const shares = (shaper: 'ZVD' | 'ZVDD') => shaperImpulses(shaping({ shaper })).map(({ share }) => share);
    expect(shares('ZVD')).toEqual([0.25, 0.5, 0.25]);
    expect(shares('ZVDD')).toEqual([0.125, 0.375, 0.375, 0.125]);
  });

  it.each(['ZV', 'ZVD', 'ZVDD'] as const)(
    '%s: shares add up to 1, nothing is left at the frequency',
    (shaper) => {
      const p = { shaper, shaperDamping: 0.2 };
      const sum = shaperImpulses(shaping(p)).reduce((total, { share }) => total + share, 0);
      expect(sum).toBeCloseTo(1, 14);
      expect(residual(p, 1)).toBeLessThan(1e-14);
    },
  );

  // An undamped resonance at r times the frequency keeps |cos(π r/2)|ⁿ: the pairs of impulses one after the other.
  it.each([
    ['ZV', 1],
    ['ZVD', 2],
    ['ZVDD', 3],
  ] as const)('%s: what a resonance off its frequency keeps', (shaper, order) => {
    for (const ratio of [0.7, 0.9, 1.05, 1.2, 1.6]) {
      expect(residual({ shaper }, ratio)).toBeCloseTo(Math.abs(Math.cos((Math.PI * ratio) / 2)) ** order, 12);
    }
  });

  // Range of frequency with at most 5 % residual vibration, as a share of the frequency: 0.06 for ZV and 0.286 for ZVD
  // (Singhose, W.: Command shaping for flexible systems, Int. J. Precis. Eng. Manuf. 10 (2009), 153–168; from memory).
  it.each([
    ['ZV', 0.06],
    ['ZVD', 0.286],
  ] as const)('%s: 5 % insensitivity as published', (shaper, published) => {
    const ratios = Array.from({ length: 10_001 }, (_, k) => 0.5 + k / 10_000);
    const inside = ratios.filter((ratio) => residual({ shaper }, ratio) <= 0.05);
    expect(Math.abs(inside.at(-1)! - inside[0]! - published)).toBeLessThan(0.005);
  });

  it('takes half, one and one and a half periods', () => {
    const time = (shaper: Shaping['shaper']) => shapingTimes(shaping({ shaper })).shaper;
    expect(['none' as const, 'ZV' as const, 'ZVD' as const, 'ZVDD' as const].map(time)).toEqual(
      [0, 0.05, 0.1, 0.15].map((each) => expect.closeTo(each, 14)),
    );
  });
});
