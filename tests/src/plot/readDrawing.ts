import type { Drawing } from '../../../src/plot/drawing.ts';
import type { Curve, Label, Mark, Point, Shape } from '../../../src/plot/marks.ts';

/** Marks of one kind, also those that are cut off at a frame. */
export function marksOf<K extends Mark['kind']>(
  marks: readonly Mark[],
  kind: K,
): Extract<Mark, { readonly kind: K }>[] {
  const all = marks.flatMap((mark): Mark[] => (mark.kind === 'clip' ? [mark, ...mark.marks] : [mark]));
  return all.filter((mark): mark is Extract<Mark, { readonly kind: K }> => mark.kind === kind);
}

export function labelsIn({ marks }: Pick<Drawing, 'marks'>, align: Label['align']): Label[] {
  return marksOf(marks, 'label').filter((label) => label.align === align && !label.upward);
}

export function textsIn({ marks }: Pick<Drawing, 'marks'>): string[] {
  return marksOf(marks, 'label').map(({ text }) => text);
}

/** The label with this text. */
export function labelOf({ marks }: Pick<Drawing, 'marks'>, text: string): Label {
  const found = marksOf(marks, 'label').find((label) => label.text === text);
  if (!found) throw new Error(`no label “${text}”`);
  return found;
}

/** From a label of an axis to its number, in the unit of the axis. */
export function numberOf(text: string): number {
  return Number(text.replace('−', '-'));
}

/**
 * Value at a place, read as a person would: by the labels along an axis, below the frame or beside
 * it.
 */
export function readerOf(
  drawing: Pick<Drawing, 'marks'>,
  align: 'middle' | 'end',
): (place: number) => number {
  const labels = labelsIn(drawing, align).filter(({ text }) => /^−?[\d.]+$/.test(text));
  const [first, last] = [labels[0], labels[labels.length - 1]];
  if (!first || !last) throw new Error('no labels along the axis');
  const place = ({ x, y }: Label) => (align === 'end' ? y : x);
  const scale = (numberOf(last.text) - numberOf(first.text)) / (place(last) - place(first));
  return (at) => numberOf(first.text) + (at - place(first)) * scale;
}

/** The points of a curve as pairs. */
export function pointsOf({ runs }: Curve): [x: number, y: number][] {
  return runs.flatMap((run) => pairsOf(run));
}

export function pairsOf(points: readonly number[]): [x: number, y: number][] {
  return Array.from({ length: points.length / 2 }, (_, k): [number, number] => [
    points[2 * k] ?? Number.NaN,
    points[2 * k + 1] ?? Number.NaN,
  ]);
}

/** The marks of a chart that stand for values. */
export function valuesIn(marks: readonly Mark[]): (Curve | Point | Shape)[] {
  return [...marksOf(marks, 'curve'), ...marksOf(marks, 'point'), ...marksOf(marks, 'shape')];
}
