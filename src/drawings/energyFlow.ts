import { inUnit, ranged } from '../../shared/core/format.ts';
import type { EnergyFlow } from '../../shared/protocol/accuracy.ts';
import { spread } from '../plot/svg/endLabels.ts';
import { drawing, labelWidth, line, near, type Size, textAt } from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';

const ENERGY_SIZE: Size = { width: 640, height: 300 };

const ENERGY = 'var(--q-energy, #555)';
const HEAT = 'var(--q-heat, #555)';
const FORCE = 'var(--q-force, #555)';
const ALARM = 'var(--alarm, #000)';

/** One way that energy takes out of the axis or into it. */
export interface Branch {
  readonly name: string;
  /** J, above zero. */
  readonly energy: number;
  readonly colour: string;
}

/** What flows in, what flows out, and what goes back to the bus. */
export interface Branches {
  readonly in: readonly Branch[];
  readonly out: readonly Branch[];
  readonly returned: number;
  /** Names of ways that are taken by too little to be drawn. */
  readonly traces: readonly string[];
}

const WAYS = [
  ['copper', 'copper', HEAT],
  ['iron', 'iron', HEAT],
  ['guide', 'guide', HEAT],
  ['nut', 'nut', HEAT],
  ['other', 'other', HEAT],
  ['work', 'work', FORCE],
  ['stored', 'stored', ENERGY],
] as const satisfies readonly (readonly [keyof EnergyFlow, string, string])[];

/** Smaller than this beside what was drawn, what does not add up is the rounding of doubles. */
const ROUNDING = 1e-9;
/** Smaller than this beside what was drawn, a way is named but not drawn: it would be thinner than anything that shows. */
const TRACE = 1e-5;

/** The account of a cycle, sorted into in and out by sign. What does not add up stands in it as what it is. */
export function branchesOf(flow: EnergyFlow): Branches {
  const sum = WAYS.reduce((total, [key]) => total + flow[key], flow.returned);
  const residual = flow.drawn - sum;
  const ways = WAYS.map(([key, name, colour]) => ({ name, energy: flow[key] as number, colour }));
  const missing = Math.abs(residual) > ROUNDING * Math.abs(flow.drawn);
  const missed = missing ? [{ name: 'unaccounted', energy: residual, colour: ALARM }] : [];
  const isTrace = ({ energy }: Branch) => Math.abs(energy) < TRACE * Math.abs(flow.drawn);
  const all = [...ways.filter((way) => !isTrace(way)), ...missed];
  return {
    in: [
      { name: 'drawn', energy: flow.drawn, colour: ENERGY },
      ...all.filter(({ energy }) => energy < 0).map((way) => ({ ...way, energy: -way.energy })),
    ],
    out: all.filter(({ energy }) => energy > 0),
    returned: flow.returned,
    traces: ways.filter((way) => way.energy !== 0 && isTrace(way)).map(({ name }) => name),
  };
}

/** Between bands, px. */
const GAP = 10;
const TOP = 12;
const FOOT = 60;
const TRUNK = 12;
/** Of the turn that returned energy takes, px. */
const TURN = 12;

/**
 * Where the energy of a cycle goes: bands as wide as the energies that flow in them, from what is drawn on the left to where it ends on the
 * right; what is returned turns back to the bus. On the scale of all of `among`.
 */
export function energyFlowChart(
  flow: EnergyFlow,
  among: readonly EnergyFlow[] = [flow],
  size: Size = ENERGY_SIZE,
): Markup {
  const { in: inflow, out, returned, traces } = branchesOf(flow);
  const perJoule = widthPerJoule(among, size.height);
  const label = out.map((way) => wayText(way.name, way.energy, flow.drawn));
  const left = 8;
  const trunk = Math.max(100, size.width * 0.22);
  const right = size.width - 20 - Math.max(0, ...label.map(labelWidth));
  const whole = perJoule * total(inflow);
  let from = TOP;
  const arriving = inflow.map((way, k) => {
    const at = TOP + perJoule * total(inflow.slice(0, k));
    const band = flowBand(left, from, trunk, at, perJoule * way.energy, way);
    const text = `${way.name} ${ranged(way.energy, 'J')}`;
    const named = textAt(left + 4, from + (perJoule * way.energy) / 2 + 5, text);
    from += perJoule * way.energy + GAP;
    return markup`${band}${named}`;
  });
  let [start, end] = [TOP, TOP];
  const ends: number[] = [];
  const leaving = out.map((way) => {
    const width = perJoule * way.energy;
    const band = flowBand(trunk + TRUNK, start, right, end, width, way);
    ends.push(end + width / 2);
    start += width;
    end += width + GAP;
    return band;
  });
  const places = spread(ends, TOP + 4, size.height - 28);
  const named = label.map(
    (each, k) =>
      markup`${line(right + 2, ends[k]!, right + 12, places[k]!, { opacity: 0.6 })}${textAt(right + 16, places[k]! + 5, each)}`,
  );
  const trace = traces.length > 0 ? `${traces.join(', ')}: below ${inUnit(TRACE, '%', 1)}` : '';
  return drawing(
    size,
    summary(flow, [...label, ...(trace === '' ? [] : [trace])]),
    markup`${arriving}
<rect x="${near(trunk)}" y="${TOP}" width="${TRUNK}" height="${near(whole)}" fill="${ENERGY}" fill-opacity="0.55"/>
${leaving}${named}
${textAt(size.width - 4, size.height - 6, trace, 'end')}
${returned > 0 ? turnBack(trunk + TRUNK, TOP + whole, perJoule * returned, left, flow) : ''}`,
  );
}

/** So that the tallest of some flows, its gaps and its turn fit the height. */
function widthPerJoule(among: readonly EnergyFlow[], height: number): number {
  return Math.min(
    ...among.map((flow) => {
      const { in: inflow, out, returned } = branchesOf(flow);
      const room = height - TOP - FOOT - GAP * Math.max(out.length, 1);
      // The turn hangs below the trunk, twice as deep as its radius, and as wide as itself.
      const hung = height - TOP - FOOT - 2 * TURN;
      return Math.min(room / total(out), hung / (total(inflow) + returned));
    }),
  );
}

function total(ways: readonly Branch[]): number {
  return ways.reduce((sum, { energy }) => sum + energy, 0);
}

/** A band of one width that swings from one height to another; both heights are its upper edge. */
function flowBand(
  x1: number,
  y1: number,
  x2: number,
  y2: number,
  width: number,
  { name, energy, colour }: Branch,
): Markup {
  const half = near((x1 + x2) / 2);
  const [a, b, c, d] = [y1, y2, y2 + width, y1 + width].map(near) as [number, number, number, number];
  const path = `M${near(x1)} ${a}C${half} ${a} ${half} ${b} ${near(x2)} ${b}V${c}C${half} ${c} ${half} ${d} ${near(x1)} ${d}Z`;
  return markup`<path d="${path}" fill="${colour}" fill-opacity="0.55" data-way="${name}" data-energy="${energy}"/>`;
}

/** From the foot of the trunk round and back to the left; `foot` is the lower edge of the band where it leaves. */
function turnBack(x: number, foot: number, width: number, left: number, flow: EnergyFlow): Markup {
  const outer = TURN + width;
  const [top, inner] = [foot - width, foot];
  const path = `M${near(x)} ${near(top)}A${near(outer)} ${near(outer)} 0 0 1 ${near(x)} ${near(top + 2 * outer)}H${near(left + 12)}V${near(inner + 2 * TURN)}H${near(x)}A${TURN} ${TURN} 0 0 0 ${near(x)} ${near(inner)}Z`;
  const middle = foot + 2 * TURN + width / 2;
  const tip = Math.max(width / 2 + 4, 6);
  return markup`<path d="${path}" fill="${ENERGY}" fill-opacity="0.55" data-way="returned" data-energy="${flow.returned}"/>
<path d="M${left + 12} ${near(middle - tip)}L${left} ${near(middle)}L${left + 12} ${near(middle + tip)}Z" fill="${ENERGY}" fill-opacity="0.55"/>
${textAt(left + 4, middle + width / 2 + 18, 'to the bus')}
${textAt(left + 4, middle + width / 2 + 35, amount(flow.returned, flow.drawn))}`;
}

function wayText(name: string, energy: number, drawn: number): string {
  return `${name} ${amount(energy, drawn)}`;
}

function amount(energy: number, drawn: number): string {
  return `${ranged(energy, 'J')}, ${inUnit(energy / drawn, '%', 2)}`;
}

function summary({ drawn, returned }: EnergyFlow, label: readonly string[]): string {
  return `Energy of a cycle: ${ranged(drawn, 'J')} drawn, ${ranged(returned, 'J')} returned; ${label.join('; ')}.`;
}
