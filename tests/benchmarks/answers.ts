import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { sceneById } from '../../scenes/index.ts';
import { machinesOf } from '../../shared/tolerance/toleranceStudy.ts';
import { simulateStudy } from '../../workers/entry/study/simulateStudy.ts';
import { doJob, type Job, type JobResult } from '../../workers/pretune/jobs.ts';
import { JobPool } from '../../workers/pretune/pool.ts';
import { pretune } from '../../workers/pretune/pretune.ts';
import { steadyCycle } from '../../workers/tolerance/leadIn.ts';
import { measureMachine } from '../../workers/tolerance/measureMachine.ts';
import { processorClock } from './processorClock.ts';

const MACHINES = 60;
const WARM_UP = 5;

/** Pretuning of the opening scene with its trade-off, in one thread, s of the processor. */
export async function pretuningTime(): Promise<number> {
  const clock = processorClock();
  const pool = new JobPool<Job, JobResult>([{ run: async (job) => doJob(job) }]);
  await pretune(sceneById('mould-shuttle'), { kind: 'peak sensitivity', limit: 1.5 }, pool, () => {});
  return clock();
}

/** The study that opens first, tuned and simulated anew, in one thread, s of the processor. */
export async function studyTime(): Promise<number> {
  const candidates = DEFAULT_STUDY.candidates.map((choice) => ({ ...choice, gains: null }));
  const clock = processorClock();
  await simulateStudy({ ...DEFAULT_STUDY, candidates });
  return clock();
}

/** Machines of a tolerance study of the opening scene in a second of one processor. */
export function machinesPerSecond(): number {
  const scene = sceneById('mould-shuttle');
  const machine = machinesOf({
    scene,
    spreads: {
      payload: { kind: 'per cent', share: 0.2 },
      sealFriction: { kind: 'per cent', share: 0.5 },
      forceConstant: { kind: 'per cent', share: 0.05 },
    },
    limits: { settlingTime: 0.1 },
    sampling: 'Latin hypercube',
    seed: 1,
    runs: MACHINES,
  });
  const { leadIn } = steadyCycle(scene);
  for (let run = 1; run <= WARM_UP; run++) measureMachine(machine(run).scene, leadIn);
  const clock = processorClock();
  for (let run = 1; run <= MACHINES; run++) measureMachine(machine(run).scene, leadIn);
  return MACHINES / clock();
}
