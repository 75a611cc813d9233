import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { JobPool } from '../../../workers/pretune/pool.ts';

/** A worker whose jobs end when the test says so. */
function heldWorker() {
  const open: { job: number; end: (result: number) => void; fail: (reason: unknown) => void }[] = [];
  return {
    open,
    run: (job: number) =>
      new Promise<number>((end, fail) => {
        open.push({ job, end, fail });
      }),
  };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

describe('a job pool', () => {
  it('gives each worker one job at a time, in the order they came', async () => {
    const workers = [heldWorker(), heldWorker()];
    const pool = new JobPool(workers);
    const results = [1, 2, 3, 4].map((job) => pool.run(job));
    const running = () => workers.flatMap(({ open }) => open.map(({ job }) => job)).sort();
    expect(running()).toEqual([1, 2]);
    const first = present(workers.find(({ open }) => at(open, 0).job === 1));
    at(first.open, 0).end(10);
    await settled();
    expect(running()).toEqual([1, 2, 3]);
    for (const { open } of workers) present(open.at(-1)).end(20);
    await settled();
    for (const { open } of workers) present(open.at(-1)).end(30);
    expect(await results[0]).toBe(10);
    expect(await results[1]).toBe(20);
    expect(await results[2]).toBe(20);
    expect(await results[3]).toBe(30);
  });

  it('passes a failure on and goes on with the next job', async () => {
    const worker = heldWorker();
    const pool = new JobPool([worker]);
    const [bad, good] = [pool.run(1), pool.run(2)];
    at(worker.open, 0).fail(new RangeError('no'));
    await expect(bad).rejects.toThrow('no');
    await settled();
    at(worker.open, 1).end(2);
    expect(await good).toBe(2);
  });
});
