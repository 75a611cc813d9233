import { PRESETS } from '../../../scenes/index.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { type CandidateChoice, candidateLetter, type Study } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import type { Job as CandidateJob } from '../../../shared/study/job.ts';
import { untunedGains } from '../../../shared/study/untunedGains.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { doJob, type Job, type JobResult } from '../../pretune/jobs.ts';
import { JobPool } from '../../pretune/pool.ts';
import { tune } from '../../pretune/pretune.ts';
import { evaluateCandidate } from '../../study/evaluateCandidate.ts';

/** A candidate that could not be simulated, and why. */
export interface LeftOut {
  readonly letter: string;
  readonly title: string;
  readonly reason: string;
}

interface SimulatedStudy {
  readonly candidates: readonly JudgedCandidate[];
  readonly leftOut: readonly LeftOut[];
}

/** Tunes the candidates of a study that have no gains, and simulates all. One that cannot be simulated does not end it for the others. */
export async function simulateStudy({ job, candidates: choices }: Study): Promise<SimulatedStudy> {
  const candidates: JudgedCandidate[] = [];
  const leftOut: LeftOut[] = [];
  for (const [index, choice] of choices.entries()) {
    const judged = await judge(job, choice, candidateLetter(index));
    if ('reason' in judged) leftOut.push(judged);
    else candidates.push(judged);
  }
  return { candidates, leftOut };
}

async function judge(
  job: CandidateJob,
  given: CandidateChoice,
  letter: string,
): Promise<JudgedCandidate | LeftOut> {
  const untuned = candidateScene(job, given, PRESETS);
  try {
    const gains = given.gains ?? (await gainsFor(job, given, untuned));
    const choice = { ...given, gains };
    const scene = candidateScene(job, choice, PRESETS);
    const outcome = evaluateCandidate(job, scene);
    return { letter, title: scene.title, choice, scene, sizing: sizeCandidate(job, scene), outcome };
  } catch (error) {
    if (error instanceof RangeError) return { letter, title: untuned.title, reason: error.message };
    throw error;
  }
}

/** Tuned, unless the sizing rules the drive out or no tuning lets it do the job: its simulation shows how it fails. */
async function gainsFor(
  job: CandidateJob,
  choice: CandidateChoice,
  scene: JudgedCandidate['scene'],
): Promise<CandidateChoice['gains']> {
  if (!sizeCandidate(job, scene).passes) return untunedGains(scene, choice, PRESETS);
  try {
    return await tuned(job, scene);
  } catch (error) {
    if (error instanceof RangeError) return untunedGains(scene, choice, PRESETS);
    throw error;
  }
}

async function tuned(job: CandidateJob, scene: JudgedCandidate['scene']): Promise<CandidateChoice['gains']> {
  const goal = { kind: 'peak sensitivity', limit: job.values.peakSensitivity } as const;
  const pool = new JobPool<Job, JobResult>([{ run: async (each) => doJob(each) }]);
  const { changes } = await tune(scene, goal, pool, () => {});
  return changes;
}
