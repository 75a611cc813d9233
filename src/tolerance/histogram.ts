import { at } from '../../shared/core/at.ts';
import { RUN_FIGURES, type RunFigureName, runFigureText } from '../../shared/tolerance/runFigures.ts';
import { axes } from '../plot/axes.ts';
import { type Drawing, drawing } from '../plot/drawing.ts';
import { footOf, rightOf, type Size } from '../plot/frame.ts';
import { inside } from '../plot/inside.ts';
import { label, line, type Mark } from '../plot/marks.ts';
import { rangeOf } from '../plot/range.ts';

const MOST_BINS = 40;
const SIZE: Size = { width: 640, height: 240 };
/** Room above the highest bar, for words. */
const ROOM = 1.15;
/** A limit farther off than this many times what the values span is not drawn to scale. */
const NEAR = 2;

interface Histogram {
  /** From one bin to the next, one more than there are bins. */
  readonly edges: readonly number[];
  readonly counts: readonly number[];
}

/**
 * Values in bins of equal width, as many as the square root of their number, which is common practice; a single one where
 * all are the same. There are no more bins than values that differ in nine digits: settling times are whole samples, between which bins stay empty.
 */
export function histogramOf(values: readonly number[]): Histogram {
  const [low, high] = rangeOf(values);
  if (!(high > low)) {
    const half = 0.05 * Math.abs(low) || 0.5;
    return { edges: [low - half, low + half], counts: [values.length] };
  }
  const bins = Math.min(
    Math.ceil(Math.sqrt(values.length)),
    new Set(values.map((value) => value.toPrecision(9))).size,
    MOST_BINS,
  );
  const counts = new Array<number>(bins).fill(0);
  for (const value of values) {
    const bin = Math.min(Math.floor((bins * (value - low)) / (high - low)), bins - 1);
    counts[bin] = at(counts, bin) + 1;
  }
  return { edges: Array.from({ length: bins + 1 }, (_, k) => low + (k * (high - low)) / bins), counts };
}

/** How many machines have which value of a figure, and the limit where it is near. */
export function histogramChart(
  name: RunFigureName,
  values: readonly number[],
  limit: number | undefined,
): Drawing {
  const { label: title, unit } = RUN_FIGURES[name];
  const { edges, counts } = histogramOf(values);
  const [low, high] = [at(edges, 0), at(edges, edges.length - 1)];
  const isNear =
    limit !== undefined && limit <= high + NEAR * (high - low) && limit >= low - NEAR * (high - low);
  const margin = 0.03 * (high - low);
  const made = axes(
    SIZE,
    {
      title,
      unit,
      from: Math.min(low, isNear ? limit : low) - margin,
      to: Math.max(high, isNear ? limit : high) + margin,
    },
    { title: 'Machines', unit: '', from: 0, to: ROOM * Math.max(...counts) },
  );
  const { frame, x, y } = made;
  const bars = counts.flatMap((count, k): Mark[] => {
    if (count === 0) return [];
    const [left, right] = [x.at(at(edges, k)), x.at(at(edges, k + 1))];
    const [top, foot] = [y.at(count), footOf(frame)];
    const [width, height] = [Math.max(right - left - 1, 1), foot - top];
    return [
      {
        kind: 'shape',
        name: 'bar',
        value: count,
        path: `M${left.toFixed(2)} ${foot}V${top.toFixed(2)}h${width.toFixed(2)}V${foot}Z`,
        box: { left, top, width, height },
        fill: { colour: 'accent' },
      },
    ];
  });
  const text = limit === undefined ? '' : `limit ${runFigureText(name, limit)}`;
  const limitMarks = (): Mark[] => {
    if (limit === undefined) return [];
    if (!isNear) return [label(frame.left + 8, frame.top + 12, `${text}, beyond the chart`, { halo: true })];
    const place = x.at(limit);
    const isRight = place > (frame.left + rightOf(frame)) / 2;
    return [
      line(place, frame.top, place, footOf(frame), { colour: 'alarm', width: 2, dash: 'dashed' }),
      label(place + (isRight ? -6 : 6), frame.top + 12, text, {
        align: isRight ? 'end' : 'start',
        halo: true,
      }),
    ];
  };
  const description = `${title} of ${values.length} machines, ${runFigureText(name, rangeOf(values)[0])} to ${runFigureText(name, rangeOf(values)[1])}.`;
  return drawing(SIZE, description, [...made.marks, ...inside(frame, bars), ...limitMarks()]);
}
