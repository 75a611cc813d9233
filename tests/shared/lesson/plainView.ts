import type { StepView } from '../../../shared/lesson/lesson.ts';

/** The bench as it opens, seen from home. */
export const PLAIN_VIEW: StepView = {
  cutaway: 'closed',
  area: 'motion',
  window: null,
  camera: { turn: 0, rise: 0, closer: 1 },
};
