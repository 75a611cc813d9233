import type { Course } from '../../shared/protocol/timeLapse.ts';
import type { Axis } from '../plot/svg/axes.ts';

/** Duties longer than this are read in hours, s. */
const HOURS_FROM = 2 * 3600;

/** The time of a duty, as long as the longest of some courses. */
export function hoursAxis(courses: readonly Course[]): Axis {
  const end = Math.max(60, ...courses.map(endOf));
  return { title: 'Duty', unit: end < HOURS_FROM ? 'min' : 'h', from: 0, to: end };
}

function endOf({ samples }: Course): number {
  return samples[samples.length - 1]?.time ?? 0;
}
