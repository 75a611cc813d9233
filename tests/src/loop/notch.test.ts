import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { defaultParameters, type Parameters } from '../../../shared/core/parameters/table.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { edgeOfNotch, filterGain, widthOfNotch } from '../../../src/loop/handles/filterGain.ts';
import { notchFor } from '../../../src/loop/handles/placeNotch.ts';
import { resonanceNear, resonances } from '../../../src/loop/handles/resonance.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { biquadResponse, PositionController } from '../../../workers/analysis/positionController.ts';
import { magnitude, unit } from '../../../workers/math/complex.ts';

const grid = Float64Array.from({ length: 4000 }, (_, k) => 1 * 4000 ** (k / 3999));

/** |1/(s² (s² + 2Dωs + ω²)) ω²| · f^lead: one mode on the line of a mass with some lead. */
function modeOnMass(frequency: number, damping: number, lead: number) {
  const magnitude = grid.map((f) => {
    const u = f / frequency;
    return f ** (lead - 2) / Math.hypot(1 - u * u, 2 * damping * u);
  });
  return { frequency: grid, magnitude };
}

describe('a resonance', () => {
  it.each([
    [300, 0.01, 0],
    [300, 0.05, 0],
    [120, 0.1, 0.5],
    [900, 0.03, 1],
  ])(
    'of %i Hz and damping ratio %f is found with both, on a line of slope −2 and %f of lead',
    (f, D, lead) => {
      const found = resonances(modeOnMass(f, D, lead));
      expect(found).toHaveLength(1);
      // The peak of a damped mode lies at f√(1 − 2D²), and the line it stands on moves it by as much again.
      expect(at(found, 0).frequency / f).toBeGreaterThan(1 - 4 * D * D - 0.003);
      expect(at(found, 0).frequency / f).toBeLessThan(1 + 0.003);
      // Closed form: 1/(2D) above the line, Δf/f = 2D at 1/√2 of the peak, both for small D.
      expect(at(found, 0).height * 2 * D).toBeGreaterThan(0.93);
      expect(at(found, 0).height * 2 * D).toBeLessThan(1.05);
      expect(at(found, 0).damping / D).toBeGreaterThan(0.9);
      expect(at(found, 0).damping / D).toBeLessThan(1.15);
    },
  );

  it('is not seen where there is none: a mass, a bend, a notch', () => {
    const bend = { frequency: grid, magnitude: grid.map((f) => 1 / f ** 2 / Math.hypot(1, f / 300)) };
    const notched = grid.map((f) => {
      const u = f / 300;
      return (Math.hypot(1 - u * u, 0.1 * u) / Math.hypot(1 - u * u, u)) * (1 / f);
    });
    expect(resonances(modeOnMass(300, 0.7, 0))).toEqual([]);
    expect(resonances(bend)).toEqual([]);
    expect(resonances({ frequency: grid, magnitude: notched })).toEqual([]);
  });

  it('counts as near within half an octave', () => {
    const found = resonances(modeOnMass(300, 0.02, 0));
    expect(resonanceNear(found, 230)).toBe(found[0]);
    expect(resonanceNear(found, 200)).toBeNull();
  });
});

describe('a notch on a resonance', () => {
  const p = defaultParameters();

  it('takes the place of the mode: its zeros have the damping of the mode, its floor is the inverse of the height', () => {
    const placed = notchFor(p, { frequency: 300, height: 10, damping: 0.05 });
    expect(placed).toMatchObject({
      changes: { filter1: 'notch' as const, filter1Frequency: 300, filter1Depth: 0.1, filter1Damping: 0.5 },
    });
  });

  it('goes to the next free filter, and nowhere when all four are in use', () => {
    const peak = { frequency: 300, height: 10, damping: 0.05 };
    expect(notchFor({ ...p, filter1: 'notch' as const }, peak)).toMatchObject({
      changes: { filter2: 'notch' as const },
    });
    const full = { filter1: 'notch', filter2: 'notch', filter3: 'low-pass', filter4: 'lead-lag' } as const;
    expect(notchFor({ ...p, ...full }, peak)).toMatch(/Delete/);
    expect(notchFor({ ...p, ...full, filter3: 'off' }, peak)).toMatchObject({
      changes: { filter3: 'notch' },
    });
  });

  it.each([
    [1e5, 1e-5],
    [1.3, 0.3],
  ])('is legal for a height of %f and a damping ratio of %f', (height, damping) => {
    const placed = notchFor(p, { frequency: 300, height, damping });
    if (typeof placed === 'string') throw new Error(placed);
    expect(checkParameters(placed.changes, p).problems).toEqual([]);
  });

  it.each(SCENES.map(({ id, parameters }) => [id, parameters] as const))(
    'takes the highest resonance away without making the loop unstable: %s',
    (_, parameters) => {
      const bare = { ...parameters, filter1: 'off' as const };
      const loopOf = (q: Parameters) => analyse(q, { ...startingPoint(q), friction: 'sliding' });
      const find = ({ frequency, openLoop }: ReturnType<typeof analyse>) =>
        resonances({ frequency, magnitude: openLoop.magnitude }).filter((each) => each.frequency > 20);
      const [peak] = find(loopOf(bare));
      const placed = notchFor(bare, present(peak));
      if (typeof placed === 'string') throw new Error(placed);
      const after = loopOf({ ...bare, ...placed.changes });
      expect(after.figures.stable).toBe(true);
      expect(resonanceNear(find(after), present(peak).frequency)?.height ?? 1).toBeLessThan(
        present(peak).height / 3,
      );
    },
  );
});

describe('filters on the plot', () => {
  const p: Parameters = {
    ...defaultParameters(),
    filter1: 'notch' as const,
    filter2: 'notch' as const,
    filter2Frequency: 1800,
    filter2Damping: 0.2,
    filter3: 'low-pass' as const,
    filter3Frequency: 2400,
  };

  it('are those of the loop', () => {
    const controller = new PositionController(p);
    for (const f of [50, 640, 1900, 3500]) {
      const z = unit(2 * Math.PI * f * controller.period);
      const drawn = ([1, 2, 3] as const).map((name) => filterGain(name, p)(f));
      controller.filters.forEach((filter, k) => {
        expect(at(drawn, k) / magnitude(biquadResponse(filter, z))).toBeCloseTo(1, 10);
      });
    }
  });

  it('have the edge of a notch where half the power passes, and the width back from it', () => {
    for (const width of [0.02, 0.5, 1.7]) expect(widthOfNotch(edgeOfNotch(width))).toBeCloseTo(width, 12);
    const quiet = { ...p, filter1Frequency: 40, filter1Damping: 0.3, filter1Depth: 1e-3 };
    // 40 Hz at 8 kHz: the bilinear transform bends the axis by far less than the tolerance.
    expect(filterGain(1, quiet)(40 * edgeOfNotch(0.3)) ** 2).toBeCloseTo(0.5, 3);
    expect(filterGain(1, quiet)(40 / edgeOfNotch(0.3)) ** 2).toBeCloseTo(0.5, 3);
  });
});
