import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import type { RobustnessRun, TuningPoint } from '../../../shared/protocol/pretune.ts';
import type { Job, JobResult } from '../../../workers/pretune/jobs.ts';
import { changedAlike } from '../../../workers/pretune/neighbours.ts';
import { JobPool } from '../../../workers/pretune/pool.ts';
import { proveAll } from '../../../workers/pretune/proof.ts';
import { NO_FILTERS, type Shape } from '../../../workers/pretune/shape.ts';
import type { Structure } from '../../../workers/pretune/structure.ts';
import { taskOf } from '../../../workers/pretune/task.ts';
import { carryOver, type Tried, tryLoops } from '../../../workers/pretune/tried.ts';
import { VARIATIONS } from '../../../workers/pretune/variations.ts';
import { Work } from '../../../workers/pretune/work.ts';

const TASK = taskOf(DEFAULT_SCENE);
const LIMIT = { kind: 'peak sensitivity', limit: 1.5 } as const;
const LOOSER = { kind: 'peak sensitivity', limit: 2 } as const;
const MOTION = { trim: 0 } as Tried['motion'];
const SHAPE: Shape = {
  ...NO_FILTERS,
  integratorCorner: 0.1,
  leadCorner: 0.4,
  derivativeTime: 1e-3,
  observerBandwidth: null,
};
const STRUCTURES = ['plain', 'other'].map((name) => ({ name }) as Structure);
const POINT: TuningPoint = {
  origin: 'pretuned',
  label: '',
  changes: {},
  peakSensitivity: 1.5,
  phaseMargin: 1,
  gainMargin: 3,
  crossover: 100,
  settlingTime: 0,
  rmsError: 1e-7,
  peakError: 1e-6,
  rmsCurrent: 1,
  peakCurrent: 2,
  rmsForce: 10,
  trip: null,
};

/** Work whose jobs are answered, not done; they are told in the order they were given. */
function answered(answer: (job: Job) => JobResult): { work: Work; jobs: Job[] } {
  const jobs: Job[] = [];
  const run = async (job: Job): Promise<JobResult> => {
    jobs.push(job);
    return answer(job);
  };
  return { work: new Work(new JobPool<Job, JobResult>([{ run }]), TASK, LIMIT, 100, () => {}), jobs };
}

const atLimit = (limit: Tried['atLimit']['limit'], shape = SHAPE) => ({
  limit,
  designs: STRUCTURES.map((structure) => ({
    structure,
    design: { shape, gains: {} as never, rejection: 1 },
  })),
  textbook: null,
});

const trials = (jobs: readonly Job[]) => jobs.filter((job) => job.kind === 'trial');
const countOf = (jobs: readonly Job[], kind: Job['kind']) => jobs.filter((job) => job.kind === kind).length;

describe('the feedforward', () => {
  it('is left alone where the table is inside its window when the command ends', async () => {
    const { work, jobs } = answered(() => POINT);
    await tryLoops(work, TASK, atLimit(LIMIT), MOTION, { rounds: 0, trimmed: 2 });
    expect(countOf(jobs, 'trial')).toBe(2);
    expect(countOf(jobs, 'trim')).toBe(0);
  });

  it('is trimmed both ways where the table arrives late', async () => {
    const { work, jobs } = answered(() => ({ ...POINT, settlingTime: 0.02 }));
    await tryLoops(work, TASK, atLimit(LIMIT), MOTION, { rounds: 0, trimmed: 1 });
    const trims = jobs.flatMap((job) => (job.kind === 'trim' ? [job.motion.trim] : []));
    expect(Math.min(...trims)).toBeLessThan(0);
    expect(Math.max(...trims)).toBeGreaterThan(0);
  });
});

describe('what is best at the limit of the goal', () => {
  it('shows the way at another: its structure first, then changed by the same factors', async () => {
    const { work, jobs } = answered(() => POINT);
    const elsewhere = { ...SHAPE, leadCorner: 0.5, derivativeTime: 4e-3 };
    const best: Tried = {
      atLimit: atLimit(LIMIT),
      structure: at(STRUCTURES, 1),
      shape: { ...SHAPE, integratorCorner: 0.15, derivativeTime: 0.5e-3 },
      motion: MOTION,
      point: POINT,
    };
    await carryOver(work, TASK, atLimit(LOOSER, elsewhere), MOTION, best);
    const [first, ...others] = trials(jobs);
    expect(present(first).label).toBe('other');
    expect(present(first).toBeat).toBeNull();
    const carried = present(others.at(-1));
    expect(carried.label).toBe('other');
    expect(carried.shape.integratorCorner / elsewhere.integratorCorner).toBeCloseTo(1.5, 12);
    expect(carried.shape.leadCorner).toBe(elsewhere.leadCorner);
    expect(carried.shape.derivativeTime).toBeCloseTo(2e-3, 12);
    for (const { toBeat } of others) expect(present(toBeat).rmsError).toBe(POINT.rmsError);
  });

  it('never puts the integrator beyond the lead', () => {
    const { integratorCorner, leadCorner } = changedAlike({ ...SHAPE, integratorCorner: 0.3 }, SHAPE, {
      ...SHAPE,
      integratorCorner: 0.3,
    });
    expect(integratorCorner).toBe(leadCorner);
  });

  it('leaves the integrator out where an observer integrates', () => {
    const observed = { ...SHAPE, integratorCorner: 0, observerBandwidth: 20 };
    const after = { ...observed, leadCorner: 0.2 };
    expect(changedAlike({ ...observed, leadCorner: 0.5, observerBandwidth: 30 }, observed, after)).toEqual({
      ...observed,
      leadCorner: 0.25,
      observerBandwidth: 30,
    });
  });
});

describe('a finalist', () => {
  const finalist = (label: string, settlingTime: number): Tried => ({
    atLimit: atLimit(LIMIT),
    structure: at(STRUCTURES, 0),
    shape: SHAPE,
    motion: MOTION,
    point: { ...POINT, settlingTime, changes: { title: label } as never },
  });
  const HARDEST = 1;
  const runsWith = (settling: (label: string, index: number) => number | null) =>
    answered((job): RobustnessRun => {
      if (job.kind !== 'variation') throw new Error(job.kind);
      const settlingTime = settling((job.changes as { title: string }).title, job.index);
      return { ...POINT, settlingTime, variation: present(VARIATIONS[job.index]).name };
    });
  const order = (jobs: readonly Job[], label: string) =>
    jobs.flatMap((job) => {
      if (job.kind !== 'variation' || (job.changes as { title: string }).title !== label) return [];
      return [job.index];
    });

  it('that has fallen behind the first is not tested further, and begins with what was hardest for that one', async () => {
    const { work, jobs } = runsWith((label, index) =>
      index === HARDEST ? (label === 'first' ? 0.01 : 0.02) : 0,
    );
    const proven = await proveAll(work, TASK, { kind: 'peak sensitivity', limit: 1.5 }, [
      finalist('first', 0),
      finalist('second', 0),
    ]);
    expect(order(jobs, 'first')).toHaveLength(VARIATIONS.length);
    expect(order(jobs, 'second')).toEqual([HARDEST]);
    expect(proven).toHaveLength(1);
  });

  it('that withstands what the first does not goes before it, tested to the end', async () => {
    const { work, jobs } = runsWith((label, index) => (index === HARDEST && label === 'first' ? null : 0));
    const proven = await proveAll(work, TASK, { kind: 'peak sensitivity', limit: 1.5 }, [
      finalist('first', 0),
      finalist('second', 0),
    ]);
    expect(order(jobs, 'second')).toHaveLength(VARIATIONS.length);
    expect(at(proven, 0).point.changes).toEqual({ title: 'second' });
    expect(at(proven, 0).robustness.map(({ variation }) => variation)).toEqual(
      VARIATIONS.map(({ name }) => name),
    );
  });
});
