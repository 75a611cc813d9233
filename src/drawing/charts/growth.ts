import { ranged } from '../../../shared/format.ts';
import { widened } from '../axes.ts';
import { lanePen } from '../lanePens.ts';
import { lineChart, USUAL_SIZE } from '../lineChart.ts';
import type { Markup } from '../markup.ts';
import type { Size } from '../plot.ts';
import { rangeOf } from '../range.ts';
import type { LaneCourse } from './drift.ts';
import { hoursAxis } from './hoursAxis.ts';

/**
 * Growth at the tool of all lanes over their duty, with the band that is allowed, plus and minus `allowed`, m. Lanes that leave a scale
 * of plus and minus `most` are cut off there; their labels say how far they go.
 */
export function growthChart(
  lanes: readonly LaneCourse[],
  allowed: number,
  size: Size = USUAL_SIZE,
  cursor?: number,
  most = Number.POSITIVE_INFINITY,
): Markup {
  const series = lanes.map(({ letter, course: { samples, trip } }) => {
    const y = samples.map(({ growth }) => growth);
    return {
      name: `${letter} ${ranged(y[y.length - 1] ?? Number.NaN, 'µm')}`,
      x: samples.map(({ time }) => time),
      y,
      pen: lanePen(letter, 'var(--q-error, #000)'),
      stops: trip !== null,
    };
  });
  const [low, high] = rangeOf([-1.2 * allowed, 1.2 * allowed], ...series.map(({ y }) => y));
  return lineChart(
    {
      words: `Growth at the tool over the duty, allowed plus or minus ${ranged(allowed, 'µm')}. At the end: ${series.map(({ name }) => name).join(', ')}.`,
      x: hoursAxis(lanes.map(({ course }) => course)),
      y: { title: 'Growth', unit: 'mm', ...widened(Math.max(low, -most), Math.min(high, most)) },
      series,
      levels: [{ y: allowed, words: `allowed ±${ranged(allowed, 'µm')}` }],
      band: [-allowed, allowed],
      cursor,
    },
    size,
  );
}
