import { checkNumber, checkParameters } from '../core/check.ts';
import { defaultParameters, PARAMETERS, type ParameterChanges } from '../core/parameters/table.ts';
import { findPreset, maxMotors } from '../core/preset.ts';
import {
  entryFailure,
  type Failure,
  failure,
  isNot,
  isRecord,
  MAX_PROBLEMS,
  type Problem,
  unknownName,
  within,
} from '../core/problem.ts';
import type { Preset, Presets } from '../core/scene.ts';
import { checkTuning } from '../core/tuning.ts';
import { type CandidateChoice, candidateLetter } from './candidate.ts';
import { candidateScene } from './candidateScene.ts';
import { DATASHEET_NAMES } from './datasheet.ts';
import type { Job } from './job.ts';

const PARTS: readonly string[] = ['preset', 'motorCount', 'own', 'gains'] satisfies (keyof CandidateChoice)[];

/** Checks a drive that is to do a legal job. Anything may come in; what the candidate is made into is legal as a whole, or it is refused. */
export function checkCandidate(
  input: unknown,
  job: Job,
  presets: Presets,
): { readonly candidate: CandidateChoice } | Failure {
  if (!isRecord(input)) return failure('', input, `${isNot(input, 'a drive')} Give an object.`);
  const stray = Object.keys(input).find((name) => !PARTS.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('a part of a candidate', stray, PARTS, input[stray])] };
  }
  const { preset: id, motorCount, own: ownInput, gains: gainInput } = input;
  const preset = findPreset(id, presets);
  if ('problems' in preset) return preset;
  const count = checkNumber(motorCount ?? 1, PARAMETERS.motorCount);
  if ('wrong' in count) return entryFailure('motorCount', motorCount, count.wrong);
  if (count.legal > maxMotors(preset)) {
    const message = `${count.legal} motors cannot share a screw. Enter 1.`;
    return entryFailure('motorCount', motorCount, message);
  }
  const own = checkDatasheet(ownInput ?? {}, preset);
  if ('problems' in own) return own;

  const untuned: CandidateChoice = {
    preset: id as string,
    motorCount: count.legal,
    own: own.changes,
    gains: null,
  };
  const { parameters } = candidateScene(job, untuned, presets);
  const { problems } = checkParameters(parameters, defaultParameters());
  if (problems.length > 0) return { problems };
  if (gainInput === undefined || gainInput === null) return { candidate: untuned };
  const gains = checkTuning(gainInput, parameters);
  return 'problems' in gains ? gains : { candidate: { ...untuned, gains: gains.changes } };
}

/** Checks what is typed over the values of a preset, for one motor. */
export function checkDatasheet(
  input: unknown,
  preset: Preset,
): { readonly changes: ParameterChanges } | Failure {
  const strays = Object.keys(isRecord(input) ? input : {}).filter((name) => !isDatasheetName(name));
  if (strays.length > 0) {
    const problems = strays.map((name) =>
      unknownName('an entry of a datasheet', name, DATASHEET_NAMES, (input as Record<string, unknown>)[name]),
    );
    return { problems: problems.slice(0, MAX_PROBLEMS) };
  }
  const { changes, problems } = checkParameters(input, { ...defaultParameters(), ...preset.parameters });
  return problems.length > 0 ? { problems } : { changes };
}

function isDatasheetName(name: string): boolean {
  return (DATASHEET_NAMES as readonly string[]).includes(name);
}

/** A problem of a candidate with its place: “Candidate B: …”. */
export function ofCandidate(index: number, problem: Problem): Problem {
  return within(`candidates[${index}]`, problem, `Candidate ${candidateLetter(index)}`);
}
