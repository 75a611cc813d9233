import type { EnergyFlow } from '../../shared/protocol/accuracy.ts';
import type { Colour } from '../ui/look/colours.ts';

/** One way that energy takes out of the axis or into it. */
export interface Branch {
  readonly name: string;
  /** J, above zero. */
  readonly energy: number;
  readonly colour: Colour;
}

/** What flows in, what flows out, and what goes back to the bus. */
export interface Branches {
  readonly in: readonly Branch[];
  readonly out: readonly Branch[];
  readonly returned: number;
  /** Names of ways that too little energy takes to be drawn. */
  readonly traces: readonly string[];
}

const WAYS = [
  ['copper', 'copper', 'heat'],
  ['iron', 'iron', 'heat'],
  ['guide', 'guide', 'heat'],
  ['nut', 'nut', 'heat'],
  ['other', 'other', 'heat'],
  ['work', 'work', 'force'],
  ['stored', 'stored', 'energy'],
] as const satisfies readonly (readonly [keyof EnergyFlow, string, Colour])[];

/** Smaller than this beside what was drawn, what does not add up is the rounding of doubles. */
const ROUNDING = 1e-9;

/**
 * The account of a cycle, sorted into in and out by sign. What does not add up appears as
 * `unaccounted`. Ways below `trace` of what is drawn are only named.
 */
export function branchesOf(flow: EnergyFlow, trace: number): Branches {
  const ways = WAYS.map(([key, name, colour]): Branch => ({ name, energy: flow[key], colour }));
  const residual = flow.drawn - totalOf(ways) - flow.returned;
  const isMissing = Math.abs(residual) > ROUNDING * Math.abs(flow.drawn);
  const missed: Branch[] = isMissing ? [{ name: 'unaccounted', energy: residual, colour: 'alarm' }] : [];
  const isTrace = ({ energy }: Branch) => Math.abs(energy) < trace * Math.abs(flow.drawn);
  const all = [...ways.filter((way) => !isTrace(way)), ...missed];
  return {
    in: [
      { name: 'drawn', energy: flow.drawn, colour: 'energy' },
      ...all.filter(({ energy }) => energy < 0).map((way) => ({ ...way, energy: -way.energy })),
    ],
    // What is not finite stays, so that the chart says that it is not.
    out: all.filter(({ energy }) => !(energy < 0) && energy !== 0),
    returned: flow.returned,
    traces: ways.filter((way) => way.energy !== 0 && isTrace(way)).map(({ name }) => name),
  };
}

/** Energy of all ways that are finite, J. */
export function totalOf(ways: readonly Branch[]): number {
  return ways.reduce((sum, { energy }) => sum + finite(energy), 0);
}

/** What an energy adds to a width: what is not finite has none. */
export function finite(energy: number): number {
  return Number.isFinite(energy) ? energy : 0;
}
