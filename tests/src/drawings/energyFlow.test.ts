import { describe, expect, it } from 'vitest';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import { branchesOf, energyFlowChart } from '../../../src/drawings/energyFlow.ts';
import type { Markup } from '../../../src/ui/markup.ts';

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

/** Thickness of every band, px, read from where its outline turns. */
function bandsIn({ text }: Markup): Map<string, { readonly width: number; readonly energy: number }> {
  const found = [...text.matchAll(/<path d="([^"]+)"[^>]*data-way="([^"]+)" data-energy="([^"]+)"/g)];
  return new Map(
    found.map(([, d, way, energy]) => {
      const swing = /^M\S+ \S+C\S+ \S+ \S+ \S+ \S+ (\S+)V([^C]+)C/.exec(d!);
      // The turn leaves upright at the right: it is as thick as it is high there.
      const turn = /^M\S+ (\S+)A.* (\S+)Z$/.exec(d!);
      const [from, to] = (swing ?? turn)!.slice(1).map(Number) as [number, number];
      return [way!, { width: to - from, energy: Number(energy) }];
    }),
  );
}

describe('the flow of energy', () => {
  it('is drawn in bands as wide as the energies, which add up', () => {
    const bands = bandsIn(energyFlowChart(flow));
    expect([...bands.keys()].sort()).toEqual(
      ['copper', 'drawn', 'guide', 'iron', 'other', 'returned', 'stored', 'work'].sort(),
    );
    const perJoule = bands.get('drawn')!.width / 30;
    for (const { width, energy } of bands.values())
      expect(Math.abs(width - perJoule * energy)).toBeLessThan(0.03);
    const leaving = [...bands].filter(([way]) => way !== 'drawn').map(([, { width }]) => width);
    const sum = leaving.reduce((total, width) => total + width, 0);
    // Each is rounded to a hundredth of a pixel at both edges.
    expect(Math.abs(sum - bands.get('drawn')!.width)).toBeLessThan(0.01 * 2 * leaving.length);
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
    const [large, less] = among.map((each) => bandsIn(energyFlowChart(each, among)).get('drawn')!.width);
    expect(less! / large!).toBeCloseTo(0.5, 3);
    expect(energyFlowChart(small).text).not.toBe(energyFlowChart(small, among).text);
  });

  it('says joules and percent of what was drawn', () => {
    const { text } = energyFlowChart(flow);
    // 12/30, 4/30.
    expect(text).toContain('copper 12.0 J, 40 %');
    expect(text).toContain('4.00 J, 13 %');
    expect(text).not.toMatch(/>nut/);
  });

  it('shows what does not add up as what it is', () => {
    const { text } = energyFlowChart({ ...flow, drawn: 33 });
    expect(text).toContain('unaccounted 3.00 J, 9.1 %');
    expect(energyFlowChart(flow).text).not.toContain('unaccounted');
    expect(branchesOf({ ...flow, drawn: 28 }).in.at(-1)).toMatchObject({ name: 'unaccounted', energy: 2 });
  });

  it('shows energy that comes out of springs and heights as coming in', () => {
    const { in: inflow, out } = branchesOf({ ...flow, stored: -2, drawn: 27.5 });
    expect(inflow.map(({ name, energy }) => [name, energy])).toEqual([
      ['drawn', 27.5],
      ['stored', 2],
    ]);
    const total = (ways: typeof out) => ways.reduce((sum, { energy }) => sum + energy, 0);
    expect(total(out) + 4).toBeCloseTo(total(inflow), 9);
  });
});
