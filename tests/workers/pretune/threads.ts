import { Worker } from 'node:worker_threads';
import type { Job, JobResult } from '../../../workers/pretune/jobs.ts';
import type { JobWorker } from '../../../workers/pretune/pool.ts';
import { bundled } from '../../tools/bundle.mjs';

/** Workers in threads of their own, with the code bundled as the page has it. */
export async function jobThreads(
  count: number,
): Promise<{ workers: JobWorker<Job, JobResult>[]; end(): void }> {
  const entry = await bundled('tests/workers/pretune/jobThread.ts');
  const threads = Array.from({ length: count }, () => new Worker(entry));
  return {
    workers: threads.map((thread) => ({
      run: (job) =>
        new Promise((resolve, reject) => {
          const done = () => {
            thread.off('message', onMessage);
            thread.off('error', onError);
          };
          const onMessage = (result: JobResult) => {
            done();
            resolve(result);
          };
          const onError = (error: unknown) => {
            done();
            reject(error);
          };
          thread.on('message', onMessage);
          thread.on('error', onError);
          thread.postMessage(job);
        }),
    })),
    end: () => {
      for (const thread of threads) void thread.terminate();
    },
  };
}
