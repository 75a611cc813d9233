import { ranged } from '../../shared/core/format.ts';
import type { Drawing } from '../plot/drawing.ts';
import type { Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { candidatePen } from '../plot/pens.ts';
import { rangeOf, widened } from '../plot/range.ts';
import type { CandidateCourse } from './drift.ts';
import { hoursAxis } from './hoursAxis.ts';

/**
 * Thermal growth at the tool of all candidates over their duty, with the band that is allowed, plus
 * and minus `allowed`, m; 0: any is. Candidates that leave a scale of plus and minus `max` are cut off there;
 * their labels say how far they go.
 */
export function growthChart(
  candidates: readonly CandidateCourse[],
  allowed: number,
  size: Size = USUAL_SIZE,
  cursor?: number,
  max = Number.POSITIVE_INFINITY,
): Drawing {
  const series = candidates.map(({ letter, course: { samples, trip } }) => {
    const y = samples.map(({ growth }) => growth);
    return {
      name: `${letter} ${ranged(y[y.length - 1] ?? Number.NaN, 'µm')}`,
      x: samples.map(({ time }) => time),
      y,
      pen: candidatePen(letter, 'error'),
      stops: trip !== null,
    };
  });
  const ends = series.map(({ name }) => name).join(', ');
  const limit = allowed > 0 ? `, allowed ±${ranged(allowed, 'µm')}` : '';
  const [low, high] = rangeOf([-1.2 * allowed, 1.2 * allowed], ...series.map(({ y }) => y));
  return lineChart(
    {
      description: `Thermal growth at the tool over the duty${limit}. At the end: ${ends}.`,
      x: hoursAxis(candidates.map(({ course }) => course)),
      y: { title: 'Growth', unit: 'mm', ...widened(Math.max(low, -max), Math.min(high, max)) },
      series,
      ...(allowed > 0 && {
        levels: [{ y: allowed, text: `allowed ±${ranged(allowed, 'µm')}` }],
        band: [-allowed, allowed] as const,
      }),
      cursor,
    },
    size,
  );
}
