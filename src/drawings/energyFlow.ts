import { at } from '../../shared/core/at.ts';
import { inUnit, ranged } from '../../shared/core/format.ts';
import type { EnergyFlow } from '../../shared/protocol/accuracy.ts';
import { type Drawing, drawing } from '../plot/drawing.ts';
import { spread } from '../plot/endLabels.ts';
import type { Size } from '../plot/frame.ts';
import { inside } from '../plot/inside.ts';
import { area, label, labelWidth, line, type Mark } from '../plot/marks.ts';
import { type Branch, type Branches, branchesOf, finite, totalOf } from './energyBranches.ts';
import { flowBand, turnBack } from './flowShapes.ts';

const ENERGY_SIZE: Size = { width: 640, height: 300 };

/** Between bands, px. */
const GAP = 10;
const TOP = 12;
const FOOT = 60;
const LEFT = 8;
const TRUNK = 12;
/** Of the turn that returned energy takes, px. */
const TURN = 12;
/**
 * Smaller than this beside what was drawn, a way is named but not drawn: it would be thinner than
 * anything that shows.
 */
const TRACE = 1e-5;

/** Places that the parts of a flow share, px. */
interface Layout {
  readonly perJoule: number;
  /** Left and right edge of the trunk, and where leaving bands end. */
  readonly trunk: number;
  readonly stem: number;
  readonly right: number;
  readonly height: number;
}

/**
 * Where the energy of a cycle goes: bands as wide as the energies that flow in them, from what is
 * drawn on the left to where it ends on the right; what is returned turns back to the bus. On the
 * scale of all of `among`.
 */
export function energyFlowChart(
  flow: EnergyFlow,
  among: readonly EnergyFlow[] = [flow],
  size: Size = ENERGY_SIZE,
): Drawing {
  const branches = branchesOf(flow, TRACE);
  const { in: inflow, out, returned, traces } = branches;
  const texts = out.map(({ name, energy }) => `${name} ${amount(energy, flow.drawn)}`);
  const trunk = Math.max(100, size.width * 0.22);
  const layout: Layout = {
    perJoule: widthPerJoule(among, size.height),
    trunk,
    stem: trunk + TRUNK,
    right: size.width - 20 - Math.max(0, ...texts.map((text) => labelWidth(text))),
    height: size.height,
  };
  const whole = layout.perJoule * totalOf(inflow);
  const trace = traces.length > 0 ? `${traces.join(', ')}: below ${inUnit(TRACE, '%', 1)}` : '';
  return drawing(size, summary(flow, [...texts, ...(trace === '' ? [] : [trace])]), [
    ...inside({ left: 0, top: 0, ...size }, [
      ...arriving(inflow, layout),
      area({ left: trunk, top: TOP, width: TRUNK, height: whole }, { colour: 'energy', opacity: 0.55 }),
      ...leaving(branches, texts, layout),
      ...(returned > 0 ? returning(flow, whole, layout) : []),
    ]),
    ...(trace === '' ? [] : [label(size.width - 4, size.height - 11, trace, { align: 'end' })]),
  ]);
}

/** So that the tallest of some flows, its gaps and its turn fit the height; px per joule. */
function widthPerJoule(among: readonly EnergyFlow[], height: number): number {
  const widths = among.map((flow) => {
    const { in: inflow, out, returned } = branchesOf(flow, TRACE);
    const room = height - TOP - FOOT - GAP * Math.max(out.length, 1);
    // The turn hangs below the trunk, twice as deep as its radius, and as wide as itself.
    const hung = height - TOP - FOOT - 2 * TURN;
    return Math.min(room / totalOf(out), hung / (totalOf(inflow) + returned));
  });
  const possible = widths.filter(Number.isFinite);
  return possible.length > 0 ? Math.min(...possible) : 0;
}

function arriving(inflow: readonly Branch[], { perJoule, trunk }: Layout): Mark[] {
  let [from, to] = [TOP, TOP];
  return inflow.flatMap((way) => {
    const width = perJoule * finite(way.energy);
    const band = flowBand(way, width, [LEFT, from], [trunk, to]);
    const text = label(LEFT + 4, from + width / 2, `${way.name} ${ranged(way.energy, 'J')}`);
    from += width + GAP;
    to += width;
    return [band, text];
  });
}

function leaving({ out }: Branches, texts: readonly string[], layout: Layout): Mark[] {
  const { perJoule, stem, right, height } = layout;
  let [from, to] = [TOP, TOP];
  const ends: number[] = [];
  const bands = out.map((way) => {
    const width = perJoule * finite(way.energy);
    const band = flowBand(way, width, [stem, from], [right, to]);
    ends.push(to + width / 2);
    from += width;
    to += width + GAP;
    return band;
  });
  const places = spread(ends, TOP + 4, height - 28);
  const named = texts.flatMap((text, k) => [
    line(right + 2, at(ends, k), right + 12, at(places, k), { colour: 'strong' }),
    label(right + 16, at(places, k), text),
  ]);
  return [...bands, ...named];
}

/** From the foot of the trunk round and back to the left. */
function returning({ returned, drawn }: EnergyFlow, whole: number, { perJoule, stem }: Layout): Mark[] {
  const width = perJoule * returned;
  const foot = TOP + whole;
  const below = foot + 2 * TURN + width;
  return [
    ...turnBack(returned, width, { x: stem, foot, left: LEFT, turn: TURN }),
    label(LEFT + 4, below + 13, 'to the bus'),
    label(LEFT + 4, below + 30, amount(returned, drawn)),
  ];
}

function amount(energy: number, drawn: number): string {
  return `${ranged(energy, 'J')}, ${inUnit(energy / drawn, '%', 2)}`;
}

function summary({ drawn, returned }: EnergyFlow, texts: readonly string[]): string {
  const [taken, back] = [ranged(drawn, 'J'), ranged(returned, 'J')];
  return `Energy of a cycle: ${taken} drawn, ${back} returned; ${texts.join('; ')}.`;
}
