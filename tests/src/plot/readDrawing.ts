import type { Markup } from '../../../src/ui/markup.ts';

export type Point = readonly [x: number, y: number];

/** Where a label stands. */
export function labelsIn(
  { text }: Markup,
  anchor: 'start' | 'middle' | 'end',
): (readonly [string, ...Point])[] {
  const found = text.matchAll(
    new RegExp(`<text x="([-\\d.]+)" y="([-\\d.]+)" text-anchor="${anchor}"[^>]*>([^<]*)</text>`, 'g'),
  );
  return [...found].map(([, x, y, label]) => [label!, Number(x), Number(y)]);
}

/** From a label of an axis to its number, in the unit of the axis. */
export function numberOf(label: string): number {
  return Number(label.replace('−', '-'));
}

/** Value at a height, read as a person would: by the labels beside the axis, which stand 5 px below their line. */
export function readerOf(drawing: Markup, anchor: 'middle' | 'end'): (place: number) => number {
  const labels = labelsIn(drawing, anchor).filter(([label]) => /^−?[\d.]+$/.test(label));
  const [first, last] = [labels[0]!, labels.at(-1)!];
  const place = ([, x, y]: (typeof labels)[number]) => (anchor === 'end' ? y - 5 : x);
  const scale = (numberOf(last[0]) - numberOf(first[0])) / (place(last) - place(first));
  return (at) => numberOf(first[0]) + (at - place(first)) * scale;
}

/** The points of all paths that the drawing cuts off at its frame. */
export function curvesIn({ text }: Markup): Point[][] {
  const frame = /<svg x="[^>]*>([\s\S]*?)<\/svg>/.exec(text)?.[1] ?? '';
  return [...frame.matchAll(/<path d="([^"]+)"/g)].map(([, d]) =>
    [...d!.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map(([, x, y]): Point => [Number(x), Number(y)]),
  );
}
