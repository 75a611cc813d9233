import { readFileSync } from 'node:fs';
import { PRESETS } from '../../scenes/index.ts';
import { readStudy } from '../../shared/files/studyFile.ts';
import type { Study } from '../../shared/study/candidate.ts';
import { verdict } from '../../shared/verdict/verdict.ts';
import { BadInput, badEntries, DONE, write } from './exit.ts';
import { jsonText } from './jsonText.ts';
import { simulateStudy } from './simulateStudy.ts';
import { studyText } from './studyText.ts';

/**
 * Tunes the candidates of a study that have no gains, simulates all and prints what they come to. One that cannot be simulated is named
 * with its reason and does not end the study for the others. Returns the exit code.
 */
export async function runStudy(path: string, jsonPath?: string): Promise<number> {
  const study = readStudyFile(path);
  const { candidates, leftOut } = await simulateStudy(study);
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
