import { describe, expect, it } from 'vitest';
import type { Job, JobResult } from '../../../workers/pretune/jobs.ts';
import type { JobWorker } from '../../../workers/pretune/pool.ts';
import { here, pretuned } from './run.ts';
import { expectMarginsKept, expectSettlingReached, GOAL, QUICK, SCENE } from './shortShuttle.ts';

describe('a goal, after a search', () => {
  it('of margins is kept', () => expectMarginsKept(QUICK));

  it('of settling is reached in its own window, at no more than its peak sensitivity', () =>
    expectSettlingReached(QUICK));
});

it('a result does not depend on how many workers there are, nor on which is sooner', async () => {
  /** Answers late, the more so the later the job. */
  const slow = (delay: number): JobWorker<Job, JobResult> => ({
    run: async (job) => {
      for (let k = 0; k < delay; k++) await new Promise((resolve) => setTimeout(resolve));
      return here.run(job);
    },
  });
  const other = await pretuned(SCENE, GOAL, [slow(7), slow(0), slow(2)], QUICK);
  expect(other).toEqual(await pretuned(SCENE, GOAL, [here], QUICK));
});
