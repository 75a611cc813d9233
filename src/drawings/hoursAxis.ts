import type { Course } from '../../shared/protocol/timeLapse.ts';
import type { Axis } from '../plot/axes.ts';
import { rangeOf } from '../plot/range.ts';

/** Duties longer than this are read in hours, s. */
const HOURS_FROM = 2 * 3600;
/** The shortest axis, s. */
const MIN = 60;

/** The time of a duty, as long as the longest of some courses. */
export function hoursAxis(courses: readonly Course[]): Axis {
  const [, end] = rangeOf([MIN], ...courses.map(({ samples }) => samples.map(({ time }) => time)));
  return { title: 'Duty', unit: end < HOURS_FROM ? 'min' : 'h', from: 0, to: end };
}
