import { afterEach, beforeEach, describe, expect, it, vi } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { Frame, FrameRequest } from '../../../shared/protocol/axis.ts';
import { AnalysisClient } from '../../../src/clients/analysisClient.ts';
import { AxisClient } from '../../../src/clients/axisClient.ts';
import { CandidateClient, candidatePool } from '../../../src/clients/candidateClient.ts';
import { ConfidenceClient } from '../../../src/clients/confidenceClient.ts';
import { FitClient } from '../../../src/clients/fitClient.ts';
import { PretuneClient } from '../../../src/clients/pretuneClient.ts';
import { VerdictClient } from '../../../src/clients/verdictClient.ts';
import { fakeWorkers, never } from './fakeWorkers.ts';

const { parameters } = DEFAULT_SCENE;
const GOAL = { kind: 'peak sensitivity', limit: 1.6 } as const;

/** What the other worker of a candidate finds. */
const COLD = { positioning: 'cold' };
const DAY = { moves: 'there and back', warm: { positioning: ['warm'], energy: 'some' } };

/** Every client but that of the running axis: how to ask it, how to cancel it, and the script its worker runs. */
const JOBS = [
  {
    script: 'measurementWorker',
    command: 'measure',
    client: () => {
      const client = new AnalysisClient();
      return {
        start: () => client.measure({ kind: 'chirp', scene: DEFAULT_SCENE }, () => {}),
        cancel: () => client.cancelMeasuring(),
      };
    },
  },
  {
    script: 'candidateWorker',
    command: 'evaluateDay',
    client: () => {
      const client = new CandidateClient(candidatePool());
      return {
        start: async () => (await client.evaluate(DEFAULT_STUDY.job, DEFAULT_SCENE, () => {})) && 'found',
        cancel: () => client.cancel(),
      };
    },
  },
  {
    script: 'fitWorker',
    command: 'fit',
    client: () => {
      const client = new FitClient();
      return { start: () => client.fit({} as never, parameters, {}), cancel: () => client.cancel() };
    },
  },
  {
    script: 'pretuneWorker',
    command: 'pretune',
    client: () => {
      const client = new PretuneClient();
      return { start: () => client.pretune(DEFAULT_SCENE, GOAL, () => {}), cancel: () => client.cancel() };
    },
  },
  {
    script: 'pretuneWorker',
    command: 'tune',
    client: () => {
      const client = new PretuneClient();
      return { start: () => client.tune(DEFAULT_SCENE, GOAL, () => {}), cancel: () => client.cancel() };
    },
  },
];

beforeEach(() => {
  vi.stubGlobal('navigator', { hardwareConcurrency: 4 });
  // No watchdog looks after a worker that a test leaves hanging.
  vi.useFakeTimers({ toFake: ['setInterval', 'clearInterval'] });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

describe.each(JOBS)('the client of the $script that asks it to $command', ({ script, command, client }) => {
  /** Workers whose first job hangs; those started later answer. */
  function startOne() {
    let answer: () => unknown = never;
    const workers = fakeWorkers({
      [script]: () => ({ [command]: () => answer(), serve() {}, evaluateCold: () => COLD }),
    });
    const { start, cancel } = client();
    const first = start();
    const before = [...workers];
    return {
      first,
      before,
      cancel,
      again: () => {
        answer = () => (script === 'candidateWorker' ? DAY : 'found');
        return start();
      },
    };
  }

  it('says so when a script cannot be loaded, in whichever of its workers, and can be started again', async () => {
    for (const k of startOne().before.keys()) {
      const { first, before, again } = startOne();
      before[k]?.fail();
      await expect(first).rejects.toThrow(/^[A-Z][\w ]* stopped: its script could not be loaded\.$/);
      expect(before.every(({ terminated }) => terminated)).toBe(true);
      expect(await again()).toBe('found');
    }
  });

  it('says so when a worker throws or sends what cannot be read', async () => {
    const one = startOne();
    one.before[0]?.fail('out of memory');
    await expect(one.first).rejects.toThrow(/stopped: out of memory$/);
    const other = startOne();
    other.before[0]?.sendUnreadable();
    await expect(other.first).rejects.toThrow(/stopped: .*could not be read/);
  });

  it('passes on what the command throws', async () => {
    fakeWorkers({
      [script]: () => ({
        [command]: () => Promise.reject(new RangeError('no such goal')),
        serve() {},
        evaluateCold: never,
      }),
    });
    await expect(client().start()).rejects.toThrow('no such goal');
  });

  it('cancels at once and has a fresh worker for the next time', async () => {
    const { first, before, cancel, again } = startOne();
    cancel();
    expect(before[0]?.terminated).toBe(true);
    expect(await first).toBeNull();
    expect(before.every(({ terminated }) => terminated)).toBe(true);
    expect(await again()).toBe('found');
  });
});

describe('the pretuning', () => {
  it('keeps its workers for the next run, also after a goal that cannot be reached has taken fresh ones', async () => {
    let answer: () => unknown = () => 'found';
    const workers = fakeWorkers({ pretuneWorker: () => ({ pretune: () => answer(), serve() {} }) });
    const client = new PretuneClient();
    const pretune = () => client.pretune(DEFAULT_SCENE, GOAL, () => {});
    expect(await pretune()).toBe('found');
    const count = workers.length;
    expect(await pretune()).toBe('found');
    expect(workers.map(({ terminated }) => terminated)).toEqual(Array(count).fill(false));
    answer = () => Promise.reject(new RangeError('no such goal'));
    await expect(pretune()).rejects.toThrow('no such goal');
    expect(workers.every(({ terminated }) => terminated)).toBe(true);
    answer = () => 'found';
    expect(await pretune()).toBe('found');
    expect(workers).toHaveLength(2 * count);
    client.cancel();
    expect(workers.every(({ terminated }) => terminated)).toBe(true);
  });
});

// News and answer come through channels of their own: the answer may be there first, and then nothing more is heard.
describe('an answer that overtakes what is told before it', () => {
  it('still brings the whole of what was drawn', async () => {
    const whole = { calculated: { drawn: 1000 } };
    fakeWorkers({ confidenceWorker: () => ({ confidence: () => whole }) });
    const found: unknown[] = [];
    const asked = { ranges: {} as never, calculated: 1000, simulated: 0 };
    const client = new ConfidenceClient();
    expect(await client.confidence(DEFAULT_STUDY.job, [], asked, (each) => found.push(each))).toBe(true);
    expect(found).toEqual([whole]);
  });

  it('still brings the judgement, once', async () => {
    const answer = { judgement: { choice: 'Take A.' }, flips: { robustness: 'holds' } };
    let isTold = false;
    fakeWorkers({
      verdictWorker: () => ({
        verdict: async (...args: unknown[]) => {
          if (isTold) await (args[3] as (judgement: unknown) => Promise<void>)(answer.judgement);
          return answer;
        },
      }),
    });
    for (isTold of [false, true]) {
      const judged: unknown[] = [];
      const client = new VerdictClient();
      const flips = client.verdict(
        DEFAULT_STUDY.job,
        [],
        (each) => judged.push(each),
        () => {},
      );
      expect(await flips).toEqual(answer.flips);
      expect(judged).toEqual([answer.judgement]);
    }
  });
});

describe('the evaluation of candidates', () => {
  const evaluate = (client: CandidateClient) => client.evaluate(DEFAULT_STUDY.job, DEFAULT_SCENE, () => {});

  it('joins what two workers find of a candidate, and the workers go on with the next', async () => {
    const workers = fakeWorkers({
      candidateWorker: () => ({ evaluateDay: () => DAY, evaluateCold: () => COLD }),
    });
    const pool = candidatePool();
    for (let candidate = 0; candidate < 3; candidate++)
      expect(await evaluate(new CandidateClient(pool))).toEqual({
        moves: 'there and back',
        accuracy: { positioning: ['cold', 'warm'], energy: 'some' },
      });
    expect(workers.map(({ terminated }) => terminated)).toEqual([false, false]);
    pool.end();
    expect(workers.map(({ terminated }) => terminated)).toEqual([true, true]);
  });

  it('waits for a worker, cancels one candidate alone, and leaves out its half that waits', async () => {
    vi.stubGlobal('navigator', { hardwareConcurrency: 2 });
    const begun: string[] = [];
    const answers: ((half: unknown) => void)[] = [];
    const half = (name: string) => () => {
      begun.push(name);
      return new Promise((resolve) => answers.push(resolve));
    };
    const workers = fakeWorkers({
      candidateWorker: () => ({ evaluateDay: half('day'), evaluateCold: half('cold') }),
    });
    const pool = candidatePool();
    const clients = [1, 2, 3].map(() => new CandidateClient(pool));
    const [first, second, third] = clients.map(evaluate);
    await vi.waitFor(() => expect(begun).toEqual(['day', 'cold']));
    expect(workers).toHaveLength(2);
    clients[1]?.cancel();
    expect(await second).toBeNull();
    expect(workers.map(({ terminated }) => terminated)).toEqual([false, false]);
    answers[0]?.(DAY);
    answers[1]?.(COLD);
    expect(await first).not.toBeNull();
    await vi.waitFor(() => expect(begun).toEqual(['day', 'cold', 'day', 'cold']));
    clients[2]?.cancel();
    expect(await third).toBeNull();
    expect(workers.map(({ terminated }) => terminated)).toEqual([true, true]);
  });
});

describe('the analysis of the loop', () => {
  it('goes on with a fresh worker after a failure, and while a measurement is cancelled', async () => {
    const workers = fakeWorkers({
      analysisWorker: () => ({ analyse: () => 'analysed' }),
      measurementWorker: () => ({ measure: never }),
    });
    const client = new AnalysisClient();
    const analyse = () => client.analyse(parameters, startingPoint(parameters));
    const failed = analyse();
    workers[0]?.fail();
    await expect(failed).rejects.toThrow('The analysis stopped: its script could not be loaded.');
    expect(await analyse()).toBe('analysed');
    const measuring = client.measure({ kind: 'chirp', scene: DEFAULT_SCENE }, () => {});
    client.cancelMeasuring();
    expect(await measuring).toBeNull();
    expect(await analyse()).toBe('analysed');
    expect(workers.map(({ terminated }) => terminated)).toEqual([true, false, true]);
  });
});

describe('the client of the running axis', () => {
  /** A worker that notes what it is told and answers each request for a frame. */
  function startAxis() {
    const told: string[] = [];
    let run = 0;
    const commands = () => ({
      load: () => void told.push('load'),
      run: () => void told.push('run'),
      useEngine: (engine: string) => void told.push(`engine ${engine}`),
      setTimeScale: (timeScale: number) => void told.push(`time scale ${timeScale}`),
      connect(port: MessagePort) {
        port.onmessage = ({ data }: MessageEvent<FrameRequest>) => {
          told.push(`goal of run ${data.goal?.run}`);
          port.postMessage({
            run,
            count: 0,
            bins: new Float64Array(2),
            now: new Float64Array(2),
            status: {},
          });
        };
        told.push('connect');
      },
    });
    const workers = fakeWorkers({ axisWorker: commands });
    const errors: string[] = [];
    const axis = new AxisClient(DEFAULT_SCENE, (reason) => errors.push(reason));
    const frame = (): Promise<Frame> => vi.waitUntil(() => axis.take());
    const beginRun = (number: number) => {
      run = number;
    };
    return { axis, workers, errors, told, frame, beginRun };
  }

  it('loads its scene before anything is asked of it', async () => {
    const { axis, told, frame } = startAxis();
    axis.send('run');
    axis.ask(null);
    await frame();
    expect(told).toEqual(['load', 'connect', 'run', 'goal of run undefined']);
    axis.terminate();
  });

  it.each([
    ['its script is missing', undefined, 'its script could not be loaded.'],
    ['it throws', 'out of memory', 'out of memory'],
  ])('reports once that %s, and is quiet until it is restarted', async (_, message, reason) => {
    const { axis, workers, errors, told } = startAxis();
    workers[0]?.fail(message);
    await vi.waitUntil(() => errors.length > 0);
    axis.send('run');
    axis.ask(null);
    await expect(axis.recording()).rejects.toThrow('stopped');
    expect(errors).toEqual([reason]);
    expect(workers).toHaveLength(1);
    told.length = 0;
    axis.restart(DEFAULT_SCENE);
    await vi.waitUntil(() => told.includes('connect'));
    expect(told).toEqual(['load', 'connect']);
    axis.terminate();
  });

  it('keeps its time scale and its engine, and counts its runs on across a restart', async () => {
    const { axis, told, frame, beginRun } = startAxis();
    axis.send('setTimeScale', 0.1);
    axis.send('useEngine', 'batch');
    beginRun(3);
    axis.ask(null);
    expect((await frame()).run).toBe(3);
    axis.restart(DEFAULT_SCENE);
    beginRun(0);
    axis.ask(null);
    const { run } = await frame();
    expect(run).toBeGreaterThan(3);
    axis.ask(null, { run, time: 1 });
    await frame();
    expect(told.slice(5)).toEqual([
      'load',
      'connect',
      'time scale 0.1',
      'engine batch',
      'goal of run undefined',
      'goal of run 0',
    ]);
    axis.terminate();
  });
});
