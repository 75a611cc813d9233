import { readFileSync } from 'node:fs';
import { PRESETS } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import { DRIVE_TYPES, type DriveType } from '../../shared/core/scene.ts';
import { sizeCandidate } from '../../shared/sizing/sizeCandidate.ts';
import { type CandidateChoice, candidateLetter } from '../../shared/study/candidate.ts';
import { candidateScene } from '../../shared/study/candidateScene.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import type { JudgedCandidate } from '../../shared/verdict/judgement.ts';
import { JOBS_OF_THE_TRADE } from './jobsOfTheTrade.ts';

/** A drive as it was simulated, and what told its axis from the default one then. */
interface Simulated {
  readonly choice: CandidateChoice;
  readonly outcome: CandidateOutcome;
  readonly parameters: ParameterChanges;
}

/** Every job with the drives that their sizing does not rule out; tests/tools/recordJobs.mjs records them anew. */
export const SIMULATED_JOBS = JSON.parse(
  readFileSync(new URL('./simulatedJobs.json', import.meta.url), 'utf8'),
) as readonly { readonly title: string; readonly candidates: readonly Simulated[] }[];

/** The drives of a job with everything known of them; a type of drive has the same letter in every job. */
export function simulatedDrives(index: number): (JudgedCandidate & { readonly type: DriveType })[] {
  const { job } = at(JOBS_OF_THE_TRADE, index);
  return at(SIMULATED_JOBS, index).candidates.map(({ choice, outcome }) => {
    const scene = candidateScene(job, choice, PRESETS);
    const type = scene.driveType;
    const letter = candidateLetter(DRIVE_TYPES.indexOf(type));
    return { type, letter, choice, title: scene.title, scene, sizing: sizeCandidate(job, scene), outcome };
  });
}
