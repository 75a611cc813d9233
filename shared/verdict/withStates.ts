import type { Course, HeatState } from '../protocol/timeLapse.ts';

/** A day as it was simulated, with some of each of its states put otherwise; its times stay. */
export function withStates(course: Course, changes: (state: HeatState) => Partial<HeatState>): Course {
  const changed = <S extends HeatState>(state: S): S => ({ ...state, ...changes(state) });
  return {
    ...course,
    samples: course.samples.map((sample) => changed(sample)),
    steady: course.steady && changed(course.steady),
  };
}
