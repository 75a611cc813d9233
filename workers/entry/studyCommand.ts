import { readFileSync } from 'node:fs';
import { KITS } from '../../scenes/index.ts';
import { sizeLane } from '../../shared/sizing/sizeLane.ts';
import type { Job as LaneJob } from '../../shared/study/job.ts';
import { type LaneChoice, laneLetter, type Study } from '../../shared/study/lane.ts';
import { laneScene } from '../../shared/study/laneScene.ts';
import { readStudy } from '../../shared/study/studyFile.ts';
import type { JudgedLane } from '../../shared/study/verdict.ts';
import { verdict } from '../../shared/verdict/verdict.ts';
import { doJob, type Job, type JobResult } from '../pretune/jobs.ts';
import { JobPool } from '../pretune/pool.ts';
import { EFFORTS, pretune } from '../pretune/pretune.ts';
import { evaluateLane } from '../study/evaluateLane.ts';
import { BadInput, DONE, write } from './exit.ts';
import { studyText } from './studyText.ts';

/** Tunes the lanes of a study that have no gains, simulates all and prints what they come to. Returns the exit code. */
export async function runStudy(path: string, jsonPath?: string): Promise<number> {
  const study = readStudyFile(path);
  const lanes: JudgedLane[] = [];
  for (const [index, choice] of study.lanes.entries())
    lanes.push(await judge(study.job, choice, laneLetter(index)));
  const found = verdict(study.job, lanes, KITS);
  if (jsonPath !== undefined)
    write(jsonPath, `${JSON.stringify({ job: study.job, lanes, verdict: found }, null, 2)}\n`);
  console.log(studyText(study.job, lanes, found));
  return DONE;
}

function readStudyFile(path: string): Study {
  let text: string;
  try {
    text = readFileSync(path, 'utf8');
  } catch {
    throw new BadInput(`Cannot read the study file ${path}.`);
  }
  const result = readStudy(text, KITS);
  if ('problems' in result)
    throw new BadInput(result.problems.map(({ message }) => `${path}: ${message}`).join('\n'));
  return result.study;
}

async function judge(job: LaneJob, given: LaneChoice, letter: string): Promise<JudgedLane> {
  const untuned = laneScene(job, given, KITS);
  try {
    const gains = given.gains ?? (await tuned(job, untuned));
    const choice = { ...given, gains };
    const scene = laneScene(job, choice, KITS);
    const outcome = evaluateLane(job, scene);
    return { letter, title: scene.title, choice, scene, sizing: sizeLane(job, scene), outcome };
  } catch (error) {
    if (error instanceof RangeError) throw new BadInput(`Lane ${letter}, ${untuned.title}: ${error.message}`);
    throw error;
  }
}

async function tuned(job: LaneJob, scene: JudgedLane['scene']): Promise<LaneChoice['gains']> {
  const goal = { kind: 'peak sensitivity', limit: job.values.peakSensitivity } as const;
  const pool = new JobPool<Job, JobResult>([{ run: async (each) => doJob(each) }]);
  const { best } = await pretune(scene, goal, pool, () => {}, EFFORTS['one limit']);
  return best.changes;
}
