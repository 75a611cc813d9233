import { setFlagsFromString } from 'node:v8';
import { runInNewContext } from 'node:vm';
import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { WorkerEnded, WorkerFailure, WorkerHost } from '../../../src/clients/workerHost.ts';
import { fakeWorkers, never } from './fakeWorkers.ts';

interface Commands {
  double(value: number): number;
  refuse(): never;
  hang(): Promise<never>;
}

const commands = (): Commands => ({
  double: (value) => 2 * value,
  refuse() {
    throw new RangeError('that is too much');
  },
  hang: never,
});

function freshHost() {
  const workers = fakeWorkers({ sumWorker: commands });
  const host = new WorkerHost<Commands>('The sum', () => new Worker(new URL('file:///sumWorker.ts')));
  return { workers, host };
}

afterEach(() => void vi.unstubAllGlobals());

describe('a worker that stays', () => {
  it('is started by the first question and answers the next ones', async () => {
    const { workers, host } = freshHost();
    expect(workers).toHaveLength(0);
    expect(await host.ask((sum) => sum.double(2))).toBe(4);
    expect(await host.ask((sum) => sum.double(3))).toBe(6);
    expect(workers).toHaveLength(1);
  });

  it('outlives a command that throws, whose error is passed on', async () => {
    const { workers, host } = freshHost();
    await expect(host.ask((sum) => sum.refuse())).rejects.toThrow('that is too much');
    expect(await host.ask((sum) => sum.double(2))).toBe(4);
    expect(workers).toHaveLength(1);
  });

  it('tells everyone who waits when the page ends it, and is started afresh', async () => {
    const { workers, host } = freshHost();
    const waiting = [host.ask((sum) => sum.hang()), host.ask((sum) => sum.hang())];
    host.end();
    for (const answer of waiting) await expect(answer).rejects.toThrow(WorkerEnded);
    expect(await host.ask((sum) => sum.double(2))).toBe(4);
    expect(workers.map(({ terminated }) => terminated)).toEqual([true, false]);
  });
});

it('a worker that was ended in the middle of its work is not kept in memory', async () => {
  setFlagsFromString('--expose-gc');
  const collectGarbage = runInNewContext('gc') as () => void;
  const { workers, host } = freshHost();
  const waiting = host.ask((sum) => sum.hang());
  host.end();
  await expect(waiting).rejects.toThrow(WorkerEnded);
  const ended = new WeakRef(present(workers.pop()));
  // What is told of a collection lets go of more, which the next one takes.
  for (let k = 0; k < 4; k++) {
    await new Promise((resolve) => setTimeout(resolve));
    collectGarbage();
  }
  expect(ended.deref()).toBeUndefined();
});

describe('a worker that fails', () => {
  it.each([
    [
      'its script is missing',
      (worker: Failing) => worker.fail(),
      'The sum stopped: its script could not be loaded.',
    ],
    ['it throws', (worker: Failing) => worker.fail('out of memory'), 'The sum stopped: out of memory'],
    [
      'its message is garbled',
      (worker: Failing) => worker.sendUnreadable(),
      /^The sum stopped: .*could not be read/,
    ],
  ])('because %s says so, and the next question starts a fresh one', async (_, fail, message) => {
    const { workers, host } = freshHost();
    const waiting = [host.ask((sum) => sum.hang()), host.ask((sum) => sum.hang())];
    for (const worker of workers) fail(worker);
    for (const answer of waiting) {
      await expect(answer).rejects.toThrow(WorkerFailure);
      await expect(answer).rejects.toThrow(message);
    }
    expect(workers.map(({ terminated }) => terminated)).toEqual([true]);
    expect(await host.ask((sum) => sum.double(2))).toBe(4);
  });

  it('while no one waits tells the next question, once, and makes no unhandled rejection', async () => {
    const { workers, host } = freshHost();
    await host.ask((sum) => sum.double(2));
    for (const worker of workers) worker.fail('out of memory');
    await new Promise((resolve) => setTimeout(resolve));
    await expect(host.ask((sum) => sum.double(2))).rejects.toThrow('The sum stopped: out of memory');
    expect(await host.ask((sum) => sum.double(2))).toBe(4);
  });
});

describe('a worker that falls silent', () => {
  beforeEach(() => void vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval', 'performance'] }));
  afterEach(() => void vi.useRealTimers());

  it('is given up while it owes an answer, says so, and the next question starts a fresh one', async () => {
    const { workers, host } = freshHost();
    expect(await host.ask((sum) => sum.double(2))).toBe(4);
    const answer = host.ask((sum) => sum.hang());
    vi.advanceTimersByTime(2000);
    await expect(answer).rejects.toThrow('The sum stopped: it no longer responds.');
    expect(workers.map(({ terminated }) => terminated)).toEqual([true]);
    expect(await host.ask((sum) => sum.double(3))).toBe(6);
  });

  it('is left in peace once it has answered, and as long as it shows that it lives', async () => {
    const { workers, host } = freshHost();
    await host.ask((sum) => sum.double(2));
    vi.advanceTimersByTime(60_000);
    void host.ask((sum) => sum.hang()).catch(() => {});
    for (let second = 0; second < 60; second++) {
      vi.advanceTimersByTime(1000);
      workers[0]?.dispatchEvent(new MessageEvent('message', { data: { heartbeat: 'alive' } }));
    }
    expect(workers.map(({ terminated }) => terminated)).toEqual([false]);
    host.end();
  });

  it('is left in peace while it tells of its progress', async () => {
    const { workers, host } = freshHost();
    let tell = () => {};
    const job = host.runJob((sum, during) => {
      tell = during(() => {});
      return sum.hang();
    });
    workers[0]?.dispatchEvent(new MessageEvent('message', { data: { heartbeat: 'alive' } }));
    for (let second = 0; second < 60; second++) {
      vi.advanceTimersByTime(1000);
      tell();
    }
    expect(workers.map(({ terminated }) => terminated)).toEqual([false]);
    host.end();
    expect(await job).toBeNull();
  });
});

describe('a job', () => {
  it('has a worker that ends with it', async () => {
    const { workers, host } = freshHost();
    expect(await host.runJob((sum) => sum.double(2))).toBe(4);
    await expect(host.runJob((sum) => sum.refuse())).rejects.toThrow('that is too much');
    expect(workers.map(({ terminated }) => terminated)).toEqual([true, true]);
  });

  it('is null when it is cancelled, which ends its worker before anything else happens', async () => {
    const { workers, host } = freshHost();
    const job = host.runJob((sum) => sum.hang());
    host.end();
    expect(workers.map(({ terminated }) => terminated)).toEqual([true]);
    expect(await job).toBeNull();
  });

  it('cancels the one before it, and lives on when that one has ended', async () => {
    const { workers, host } = freshHost();
    const first = host.runJob((sum) => sum.hang());
    const second = host.runJob((sum) => sum.double(4));
    expect(await first).toBeNull();
    expect(await second).toBe(8);
    expect(workers).toHaveLength(2);
  });

  it('hears of its progress while it is under way, and no more once it is answered', async () => {
    const { host } = freshHost();
    const heard: string[] = [];
    let tell = (_news: string) => {};
    await host.runJob((sum, during) => {
      tell = during((news: string) => heard.push(news));
      tell('half');
      return sum.double(2);
    });
    tell('late');
    expect(heard).toEqual(['half']);
  });

  it('that fails is rejected, not cancelled', async () => {
    const { workers, host } = freshHost();
    const job = host.runJob((sum) => sum.hang());
    for (const worker of workers) worker.fail();
    await expect(job).rejects.toThrow(WorkerFailure);
  });
});

type Failing = ReturnType<typeof fakeWorkers>[number];
