import { afterEach, expect, it, vi } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { fakeWorkers, never } from './fakeWorkers.ts';

afterEach(() => void vi.unstubAllGlobals());

/** A pretuning that goes on until the test says how it ends; the jobs that other tests leave behind do not count. */
async function pretuning() {
  vi.resetModules();
  vi.stubGlobal('navigator', { hardwareConcurrency: 2 });
  const { isJobUnderWay } = await import('../../../src/clients/workerHost.ts');
  const { PretuneClient } = await import('../../../src/clients/pretuneClient.ts');
  let answer: (result: string) => void = () => {};
  const result = new Promise((resolve) => {
    answer = resolve;
  });
  const workers = fakeWorkers({ pretuneWorker: () => ({ pretune: () => result, serve: never }) });
  const client = new PretuneClient();
  const start = () =>
    client.pretune(DEFAULT_SCENE, { kind: 'peak sensitivity', limit: 1.6 }, () => {}).catch(String);
  return { isJobUnderWay, workers, client, start, answer };
}

it('is under way from its start to its answer', async () => {
  const { isJobUnderWay, start, answer } = await pretuning();
  expect(isJobUnderWay()).toBe(false);
  const found = start();
  expect(isJobUnderWay()).toBe(true);
  answer('found');
  expect(await found).toBe('found');
  expect(isJobUnderWay()).toBe(false);
});

it('is no longer under way once it was cancelled, or a worker has failed', async () => {
  const cancelled = await pretuning();
  const nothing = cancelled.start();
  cancelled.client.cancel();
  expect(await nothing).toBeNull();
  expect(cancelled.isJobUnderWay()).toBe(false);
  const failing = await pretuning();
  const failure = failing.start();
  failing.workers[0]?.fail('out of memory');
  expect(await failure).toContain('out of memory');
  expect(failing.isJobUnderWay()).toBe(false);
});
