import { inUnit } from '../../shared/core/format.ts';
import type { Course, LapseSample } from '../../shared/protocol/timeLapse.ts';
import { rangeOf } from '../plot/range.ts';
import { widened } from '../plot/svg/axes.ts';
import { pen } from '../plot/svg/candidatePens.ts';
import { lineChart, type Series, USUAL_SIZE } from '../plot/svg/lineChart.ts';
import { type Size, textAt } from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';
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

/** Room above the highest temperature, as a share of the scale: below limits that are drawn, or below notes of those that are not. */
const BESIDE_LIMITS = 0.08;
const BESIDE_NOTES = 0.4;

/** Temperatures of one axis over its duty, on the scale of all of `among`. */
export function temperaturesChart(
  data: TemperatureData,
  among: readonly TemperatureData[] = [data],
  size: Size = USUAL_SIZE,
  cursor?: number,
): Markup {
  const { course, other, foldback, limit, hasScrew } = data;
  const [low, high] = rangeOf(...among.flatMap(allTemperatures));
  const reach = (line: number) => high - low > NEAR_LIMIT * (line - low);
  const lowestLimit = Math.min(...among.map((each) => each.foldback));
  const top = reach(lowestLimit) ? Math.max(high, ...among.map((each) => each.limit)) : high;
  const spare = top === high ? BESIDE_NOTES : BESIDE_LIMITS;
  const y = { title: 'Temperature', unit: '°C', ...widened(low, top + spare * (top - low)) } as const;
  const nodes = NODES.filter((node) => hasScrew || node !== 'screw');
  const limits = [
    { y: foldback, text: `fold-back ${inUnit(foldback, '°C')}` },
    { y: limit, text: `limit ${inUnit(limit, '°C')}` },
  ];
  const isHere = (each: { readonly y: number }) => each.y <= y.to;
  const beyond = limits.filter((each) => !isHere(each)).map(({ text }) => text);
  return lineChart(
    {
      text: summary(course, nodes),
      x: hoursAxis(among.flatMap((each) => [each.course, each.other])),
      y,
      series: [
        ...nodes.map((node) => seriesOf(other, node, '', 1.5, 0.45)),
        ...nodes.map((node) => seriesOf(course, node, nameOf(course, node, hasScrew), 2.25, 1)),
      ],
      levels: limits.filter(isHere),
      cursor,
      marks: ({ frame }) =>
        markup`${beyond.map((text, k) => textAt(frame.left + 8, frame.top + 18 + 18 * k, `↑ ${text}`))}`,
    },
    size,
  );
}

function allTemperatures({ course, other, hasScrew }: TemperatureData): number[][] {
  const nodes = NODES.filter((node) => hasScrew || node !== 'screw');
  return [course, other].flatMap(({ samples }) => nodes.map((node) => samples.map((sample) => sample[node])));
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
    pen: { ...pen(NODES.indexOf(node), 'var(--q-heat, #000)', width), opacity },
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
  return `Temperatures over the duty, ${cooling ? 'with coolant' : 'in the air of the room'}. At the end: ${ends}.`;
}
