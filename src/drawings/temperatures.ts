import { inUnit } from '../../shared/core/format.ts';
import type { Course, LapseSample } from '../../shared/protocol/timeLapse.ts';
import type { Drawing } from '../plot/drawing.ts';
import type { Size } from '../plot/frame.ts';
import { lineChart, type Series, USUAL_SIZE } from '../plot/lineChart.ts';
import { label } from '../plot/marks.ts';
import { penOfPlace } from '../plot/pens.ts';
import { rangeOf, widened } from '../plot/range.ts';
import { hoursAxis } from './hoursAxis.ts';

export interface TemperatureData {
  /** With the cooling that is looked at, drawn strong, and with the other, drawn faint. */
  readonly course: Course;
  readonly other: Course;
  /** °C. */
  readonly foldback: number;
  readonly limit: number;
  readonly hasScrew: boolean;
}

const NODES = ['winding', 'carrier', 'table', 'screw'] as const satisfies readonly (keyof LapseSample)[];
type Node = (typeof NODES)[number];

/** A limit is on the scale once the hottest part has come this share of the way to it. */
const NEAR_LIMIT = 0.5;

/**
 * Room above the highest temperature, as a share of the scale: below limits that are drawn, or
 * below notes of those that are not.
 */
const BESIDE_LIMITS = 0.08;
const BESIDE_NOTES = 0.4;

/** Temperatures of one axis over its duty, on the scale of all of `among`. */
export function temperaturesChart(
  data: TemperatureData,
  among: readonly TemperatureData[] = [data],
  size: Size = USUAL_SIZE,
  cursor?: number,
): Drawing {
  const { course, other, foldback, limit, hasScrew } = data;
  const [low, high] = rangeOf(...among.flatMap(allTemperatures));
  const reach = (line: number) => high - low > NEAR_LIMIT * (line - low);
  const lowestLimit = Math.min(...among.map((each) => each.foldback));
  const top = reach(lowestLimit) ? Math.max(high, ...among.map((each) => each.limit)) : high;
  const spare = top === high ? BESIDE_NOTES : BESIDE_LIMITS;
  const y = { title: 'Temperature', unit: '°C', ...widened(low, top + spare * (top - low)) } as const;
  const nodes = nodesOf(hasScrew);
  const limits = [
    { y: foldback, text: `fold-back ${inUnit(foldback, '°C')}` },
    { y: limit, text: `limit ${inUnit(limit, '°C')}` },
  ];
  const isHere = (each: { readonly y: number }) => each.y <= y.to;
  const beyond = limits.filter((each) => !isHere(each)).map(({ text }) => text);
  return lineChart(
    {
      description: summary(course, nodes),
      x: hoursAxis(among.flatMap((each) => [each.course, each.other])),
      y,
      series: [
        ...nodes.map((node) => seriesOf(other, node, '', 1.5, 0.45)),
        ...nodes.map((node) => seriesOf(course, node, nameOf(course, node, hasScrew), 2.25, 1)),
      ],
      levels: limits.filter(isHere),
      cursor,
      notes: ({ frame }) =>
        beyond.map((text, k) => label(frame.left + 8, frame.top + 13 + 18 * k, `↑ ${text}`, { halo: true })),
    },
    size,
  );
}

function nodesOf(hasScrew: boolean): readonly Node[] {
  return NODES.filter((node) => hasScrew || node !== 'screw');
}

function allTemperatures({ course, other, hasScrew }: TemperatureData): number[][] {
  return [course, other].flatMap(({ samples }) =>
    nodesOf(hasScrew).map((node) => samples.map((sample) => sample[node])),
  );
}

function seriesOf(
  { samples, trip }: Course,
  node: Node,
  name: string,
  width: number,
  opacity: number,
): Series {
  return {
    name,
    x: samples.map(({ time }) => time),
    y: samples.map((sample) => sample[node]),
    pen: { ...penOfPlace(NODES.indexOf(node), 'heat', width), opacity },
    stops: trip !== null,
  };
}

function nameOf({ samples }: Course, node: Node, hasScrew: boolean): string {
  const last = samples[samples.length - 1];
  const name = node === 'carrier' && hasScrew ? 'housing' : node;
  return last ? `${name} ${inUnit(last[node], '')}` : name;
}

function summary({ samples, cooling }: Course, nodes: readonly Node[]): string {
  const last = samples[samples.length - 1];
  const ends = last ? nodes.map((node) => `${node} ${inUnit(last[node], '°C')}`).join(', ') : 'none';
  return `Temperatures over the duty, ${cooling ? 'with coolant' : 'in room air'}. At the end: ${ends}.`;
}
