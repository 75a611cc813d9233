import { describe, expect, it } from 'vitest';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import { branchesOf } from '../../../src/drawings/energyBranches.ts';
import { energyFlowChart } from '../../../src/drawings/energyFlow.ts';
import type { Drawing } from '../../../src/plot/drawing.ts';
import { marksOf, textsIn } from '../plot/readDrawing.ts';

const flow: EnergyFlow = {
  cycleTime: 1.2,
  drawn: 30,
  returned: 4,
  copper: 12,
  iron: 3,
  guide: 6,
  nut: 0,
  other: 1,
  work: 3.5,
  stored: 0.5,
};

/** Smaller ways are only named. */
const TRACE = 1e-5;

/** Thickness of every band, px, read from where its outline turns. */
function bandsIn({ marks }: Drawing): Map<string, { readonly width: number; readonly energy: number }> {
  const shapes = marksOf(marks, 'shape').flatMap(({ name, value: energy, path }) => {
    const swing = /^M\S+ \S+C\S+ \S+ \S+ \S+ \S+ (\S+)V([^C]+)C/.exec(path);
    // The turn leaves upright at the right: it is as thick as it is high there.
    const turn = /^M\S+ (\S+)A.* (\S+)Z$/.exec(path);
    const [, from, to] = swing ?? turn ?? [];
    return from && to ? [[name, { width: Number(to) - Number(from), energy }] as const] : [];
  });
  return new Map(shapes);
}

function widthOf(drawing: Drawing, name: string): number {
  return bandsIn(drawing).get(name)?.width ?? Number.NaN;
}

describe('the flow of energy', () => {
  it('is drawn in bands as wide as the energies, which add up', () => {
    const bands = bandsIn(energyFlowChart(flow));
    expect([...bands.keys()].sort()).toEqual(
      ['copper', 'drawn', 'guide', 'iron', 'other', 'returned', 'stored', 'work'].sort(),
    );
    const drawn = widthOf(energyFlowChart(flow), 'drawn');
    const perJoule = drawn / 30;
    for (const { width, energy } of bands.values())
      expect(Math.abs(width - perJoule * energy)).toBeLessThan(0.03);
    const leaving = [...bands].filter(([way]) => way !== 'drawn').map(([, { width }]) => width);
    const sum = leaving.reduce((total, width) => total + width, 0);
    // Each is rounded to a hundredth of a pixel at both edges.
    expect(Math.abs(sum - drawn)).toBeLessThan(0.01 * 2 * leaving.length);
  });

  it('of several drives is drawn to one scale, and the largest fits', () => {
    const small = {
      ...flow,
      drawn: 15,
      returned: 2,
      copper: 6,
      iron: 1.5,
      guide: 3,
      other: 0.5,
      work: 1.75,
      stored: 0.25,
    };
    const among = [flow, small];
    const together = energyFlowChart(small, among);
    expect(widthOf(together, 'drawn') / widthOf(energyFlowChart(flow, among), 'drawn')).toBeCloseTo(0.5, 3);
    expect(widthOf(energyFlowChart(small), 'drawn')).toBeGreaterThan(widthOf(together, 'drawn'));
  });

  it('says joules and percent of what was drawn', () => {
    const texts = textsIn(energyFlowChart(flow));
    // 12/30, 4/30.
    expect(texts).toEqual(expect.arrayContaining(['copper 12.0 J, 40 %', '4.00 J, 13 %']));
    expect(texts.join()).not.toContain('nut');
  });

  it('shows what does not add up as what it is', () => {
    expect(textsIn(energyFlowChart({ ...flow, drawn: 33 }))).toContain('unaccounted 3.00 J, 9.1 %');
    expect(textsIn(energyFlowChart(flow)).join()).not.toContain('unaccounted');
    expect(branchesOf({ ...flow, drawn: 28 }, TRACE).in.at(-1)).toMatchObject({
      name: 'unaccounted',
      energy: 2,
    });
  });

  it('shows energy that comes out of springs and heights as coming in', () => {
    const { in: inflow, out } = branchesOf({ ...flow, stored: -2, drawn: 27.5 }, TRACE);
    expect(inflow.map(({ name, energy }) => [name, energy])).toEqual([
      ['drawn', 27.5],
      ['stored', 2],
    ]);
    const total = (ways: typeof out) => ways.reduce((sum, { energy }) => sum + energy, 0);
    expect(total(out) + 4).toBeCloseTo(total(inflow), 9);
  });

  it('says so where nothing flows, and where an energy is not known', () => {
    const none = Object.fromEntries(Object.keys(flow).map((name) => [name, 0])) as unknown as EnergyFlow;
    expect(JSON.stringify(energyFlowChart(none).marks)).not.toContain('null');
    const unknown = energyFlowChart({ ...flow, copper: Number.NaN });
    // What is not known shows as what does not add up: 12 of 30 J.
    expect(textsIn(unknown)).toEqual(
      expect.arrayContaining(['1 value is not finite', 'unaccounted 12.0 J, 40 %']),
    );
  });
});
