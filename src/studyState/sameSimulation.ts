import type { Scene } from '../../shared/core/scene.ts';
import type { Job, JobEntry } from '../../shared/study/job.ts';

/** What else than its scene the outcome of a candidate depends on. */
const TESTED: readonly JobEntry[] = ['scanLength', 'rippleBandwidth', 'dailyTime', 'growthLimit', 'wear'];

/** Whether the tests of two jobs are the same. */
export function sameTests(a: Job, b: Job): boolean {
  return TESTED.every((entry) => a.values[entry] === b.values[entry]);
}

/** Whether two axes are the same, whatever they are called. */
export function sameScene(a: Scene, b: Scene): boolean {
  return (
    a.driveType === b.driveType &&
    JSON.stringify(a.parameters) === JSON.stringify(b.parameters) &&
    JSON.stringify(a.moves) === JSON.stringify(b.moves)
  );
}
