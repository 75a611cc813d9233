import { inUnit } from '../../../shared/format.ts';
import type { Course } from '../../../shared/timeLapse.ts';
import { widened } from '../axes.ts';
import { lanePen } from '../lanePens.ts';
import { lineChart, USUAL_SIZE } from '../lineChart.ts';
import type { Markup } from '../markup.ts';
import type { Size } from '../plot.ts';
import { rangeOf } from '../range.ts';
import { hoursAxis } from './hoursAxis.ts';

export interface LaneCourse {
  readonly letter: string;
  readonly course: Course;
}

/** Least span of the scale: less than this nobody feels. */
const LEAST = 0.001;

/** Force per ampere of all lanes over their duty, against that of the cold axis. */
export function driftChart(lanes: readonly LaneCourse[], size: Size = USUAL_SIZE, cursor?: number): Markup {
  const series = lanes.map(({ letter, course: { samples, trip } }) => {
    const y = samples.map(({ forcePerAmp }) => forcePerAmp - 1);
    return {
      name: `${letter} ${inUnit(y[y.length - 1] ?? Number.NaN, '%', 2)}`,
      x: samples.map(({ time }) => time),
      y,
      pen: lanePen(letter, 'var(--q-force, #000)'),
      stops: trip !== null,
    };
  });
  const [low, high] = rangeOf([0, -LEAST], ...series.map(({ y }) => y));
  return lineChart(
    {
      words: `Change of force per ampere over the duty. At the end: ${series.map(({ name }) => name).join(', ')}.`,
      x: hoursAxis(lanes.map(({ course }) => course)),
      y: { title: 'Force per ampere', unit: '%', ...widened(low, high) },
      series,
      cursor,
    },
    size,
  );
}
