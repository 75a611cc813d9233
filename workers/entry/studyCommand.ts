import { readFileSync } from 'node:fs';
import { PRESETS } from '../../scenes/index.ts';
import { readStudy } from '../../shared/files/studyFile.ts';
import { sizeCandidate } from '../../shared/sizing/sizeCandidate.ts';
import { type CandidateChoice, candidateLetter, type Study } from '../../shared/study/candidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import type { Job as CandidateJob } from '../../shared/study/job.ts';
import { untunedGains } from '../../shared/study/untunedGains.ts';
import type { JudgedCandidate } from '../../shared/verdict/judgement.ts';
import { verdict } from '../../shared/verdict/verdict.ts';
import { doJob, type Job, type JobResult } from '../pretune/jobs.ts';
import { JobPool } from '../pretune/pool.ts';
import { EFFORTS, pretune } from '../pretune/pretune.ts';
import { evaluateCandidate } from '../study/evaluateCandidate.ts';
import { BadInput, badEntries, DONE, write } from './exit.ts';
import { jsonText } from './jsonText.ts';
import { type LeftOut, studyText } from './studyText.ts';

/**
 * Tunes the candidates of a study that have no gains, simulates all and prints what they come to. One that cannot be simulated is named
 * with its reason and does not end the study for the others. Returns the exit code.
 */
export async function runStudy(path: string, jsonPath?: string): Promise<number> {
  const study = readStudyFile(path);
  const candidates: JudgedCandidate[] = [];
  const leftOut: LeftOut[] = [];
  for (const [index, choice] of study.candidates.entries()) {
    const judged = await judge(study.job, choice, candidateLetter(index));
    if ('reason' in judged) leftOut.push(judged);
    else candidates.push(judged);
  }
  const found = verdict(study.job, candidates, PRESETS);
  if (jsonPath !== undefined)
    write(jsonPath, jsonText({ job: study.job, candidates, leftOut, verdict: found }));
  console.log(studyText(study.job, candidates, leftOut, found));
  return DONE;
}

function readStudyFile(path: string): Study {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    throw new BadInput(`Cannot read the study file ${path}.`);
  }
  const result = readStudy(text, PRESETS);
  if ('problems' in result) throw badEntries(path, result.problems);
  return result.study;
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
  const { best } = await pretune(scene, goal, pool, () => {}, EFFORTS['one limit']);
  return best.changes;
}
