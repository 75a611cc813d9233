import { PRESETS } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import { maxMotors } from '../../../shared/core/preset.ts';
import { tuningOf } from '../../../shared/core/tuning.ts';
import type { CandidateChoice, Study } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { checkCandidate } from '../../../shared/study/checkCandidate.ts';
import { DATASHEET_NAMES } from '../../../shared/study/datasheet.ts';
import type { Job } from '../../../shared/study/job.ts';
import { randomJob } from './randomJob.ts';

/** A legal study: any job, one to four drives, some with values of their own, some tuned. */
export function randomStudy(random: () => number): Study {
  const job = randomJob(random);
  return {
    job,
    candidates: Array.from({ length: 1 + Math.floor(random() * 4) }, () => randomCandidate(random, job)),
  };
}

function randomCandidate(random: () => number, job: Job): CandidateChoice {
  const presets = Object.keys(PRESETS);
  const preset = at(presets, Math.floor(random() * presets.length));
  let candidate: CandidateChoice = {
    preset,
    motorCount: 1 + Math.floor(random() * maxMotors(present(PRESETS[preset]))),
    own: {},
    gains: null,
  };
  for (const name of DATASHEET_NAMES) {
    const value = present(PRESETS[candidate.preset]).parameters[name];
    if (value === undefined || random() < 0.6) continue;
    const attempt = { ...candidate, own: { ...candidate.own, [name]: value * (0.7 + 0.6 * random()) } };
    if ('candidate' in checkCandidate(attempt, job, PRESETS)) candidate = attempt;
  }
  if (random() < 0.5) return candidate;
  const tuning: ParameterChanges = tuningOf(candidateScene(job, candidate, PRESETS).parameters);
  return { ...candidate, gains: { ...tuning, Kp: 1e5 * (1 + random()), notch1: random() < 0.5 } };
}
