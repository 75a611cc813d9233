import { inUnit } from '../../shared/core/format.ts';
import type { Course } from '../../shared/protocol/timeLapse.ts';
import type { Drawing } from '../plot/drawing.ts';
import type { Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { candidatePen } from '../plot/pens.ts';
import { rangeOf, widened } from '../plot/range.ts';
import { hoursAxis } from './hoursAxis.ts';

export interface CandidateCourse {
  readonly letter: string;
  readonly course: Course;
}

/** Smallest span of the scale: nobody notices less than this. */
const MIN = 0.001;

/** Force per ampere of all candidates over their duty, against that of the cold axis. */
export function driftChart(
  candidates: readonly CandidateCourse[],
  size: Size = USUAL_SIZE,
  cursor?: number,
): Drawing {
  const series = candidates.map(({ letter, course: { samples, trip } }) => {
    const y = samples.map(({ forcePerAmp }) => forcePerAmp - 1);
    return {
      name: `${letter} ${inUnit(y[y.length - 1] ?? Number.NaN, '%', 2)}`,
      x: samples.map(({ time }) => time),
      y,
      pen: candidatePen(letter, 'force'),
      stops: trip !== null,
    };
  });
  const ends = series.map(({ name }) => name).join(', ');
  const [low, high] = rangeOf([0, -MIN], ...series.map(({ y }) => y));
  return lineChart(
    {
      description: `Change of force per ampere over the duty. At the end: ${ends}.`,
      x: hoursAxis(candidates.map(({ course }) => course)),
      y: { title: 'Force per ampere', unit: '%', ...widened(low, high) },
      series,
      cursor,
    },
    size,
  );
}
