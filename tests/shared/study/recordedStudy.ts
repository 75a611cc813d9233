import { readFileSync } from 'node:fs';
import { PRESETS } from '../../../scenes/index.ts';
import { sizeCandidate } from '../../../shared/sizing/sizeCandidate.ts';
import { candidateLetter } from '../../../shared/study/candidate.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import type { SimulatedStudy } from '../../../src/studyState/shippedResults.ts';
import {
  type CandidateState,
  NO_CONFIDENCE,
  NO_VERDICT,
  type StudyState,
} from '../../../src/studyState/state.ts';

/**
 * The study that opens first, as simulation found it: tubular, U-channel, flat, screw. Numbers are rounded to six digits and long
 * lists thinned; tests/tools/recordStudy.mjs records it anew.
 */
const RECORDED = JSON.parse(
  readFileSync(new URL('../../../scenes/simulated/defaultStudy.json', import.meta.url), 'utf8'),
) as SimulatedStudy;

/** The job that was simulated, with whatever a test wants otherwise. */
export function recordedJob(changes: Partial<JobValues> = {}): Job {
  return { ...RECORDED.job, values: { ...defaultJobValues(), ...RECORDED.job.values, ...changes } };
}

/** The four candidates with everything known of them; of another job their sizing is that of it, what was simulated stays. */
export function recordedCandidates(job: Job = recordedJob()): (CandidateState & JudgedCandidate)[] {
  return RECORDED.candidates.map(({ choice, outcome }, place) => {
    const scene = candidateScene(job, choice, PRESETS);
    return {
      letter: candidateLetter(place),
      choice,
      title: scene.title,
      scene,
      sizing: sizeCandidate(job, scene),
      outcome,
      isSought: false,
      progress: null,
      error: null,
    };
  });
}

/** The four by name, for tests that need a certain one. */
export function recordedDrives(job: Job = recordedJob()): Record<'A' | 'B' | 'C' | 'D', JudgedCandidate> {
  const [A, B, C, D] = recordedCandidates(job);
  if (!A || !B || !C || !D) throw new Error('the recorded study has fewer than four candidates');
  return { A, B, C, D };
}

/** A study with the four candidates simulated. */
export function recordedState(job: Job = recordedJob()): StudyState {
  const candidates = recordedCandidates(job);
  return {
    study: { job, candidates: candidates.map(({ choice }) => choice) },
    units: 'metric',
    candidates,
    refused: [],
    isRunning: false,
    begun: null,
    verdict: NO_VERDICT,
    confidence: NO_CONFIDENCE,
    isReportDue: false,
  };
}
