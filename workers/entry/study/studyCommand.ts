import { PRESETS } from '../../../scenes/index.ts';
import { readStudy } from '../../../shared/files/studyFile.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import { rangesOf } from '../../../shared/study/ranges.ts';
import type { Confidence } from '../../../shared/verdict/confidence/confidence.ts';
import { CALCULATED, findConfidence } from '../../../shared/verdict/confidence/findConfidence.ts';
import type { JudgedCandidate } from '../../../shared/verdict/judgement.ts';
import { verdict } from '../../../shared/verdict/verdict.ts';
import { moveOutcome } from '../../study/moveOutcome.ts';
import { badEntries, DONE, read, write } from '../exit.ts';
import { jsonText } from '../jsonText.ts';
import { simulateStudy } from './simulateStudy.ts';
import { studyText } from './studyText.ts';

/**
 * Tunes the candidates of a study that have no gains, simulates all and prints what they come to. One that cannot be simulated is named
 * with its reason and does not end the study for the others. With the verdict stands how probable its choice is, `simulated` of the jobs that
 * are drawn with their moves simulated as well. Returns the exit code.
 */
export async function runStudy(path: string, jsonPath?: string, simulated = 0): Promise<number> {
  const study = readStudyFile(path);
  const { candidates, leftOut } = await simulateStudy(study);
  const found = verdict(study.job, candidates, PRESETS);
  const confidence = confidenceOf(study, candidates, simulated);
  if (jsonPath !== undefined)
    write(jsonPath, jsonText({ job: study.job, candidates, leftOut, verdict: found, confidence }));
  console.log(studyText(study.job, candidates, leftOut, found, confidence));
  return DONE;
}

/** Null without a candidate that could be simulated. */
function confidenceOf(
  study: Study,
  candidates: readonly JudgedCandidate[],
  simulated: number,
): Confidence | null {
  if (candidates.length === 0) return null;
  const asked = { ranges: rangesOf(study), calculated: CALCULATED, simulated };
  let last: Confidence | null = null;
  for (const found of findConfidence(study.job, candidates, asked, moveOutcome)) last = found;
  return last;
}

function readStudyFile(path: string): Study {
  const result = readStudy(read(path, 'study file'), PRESETS);
  if ('problems' in result) throw badEntries(path, result.problems);
  return result.study;
}
