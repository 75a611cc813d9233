import { checkNumber, checkParameters } from '../core/check.ts';
import { linear } from '../core/parameters/row.ts';
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
  shown,
  unknownName,
  within,
} from '../core/problem.ts';
import type { Preset, Presets } from '../core/scene.ts';
import { checkTuning } from '../core/tuning.ts';
import { type CandidateChoice, candidateLetter } from './candidate.ts';
import { candidateScene } from './candidateScene.ts';
import { DATASHEET_NAMES } from './datasheet.ts';
import type { Job } from './job.ts';
import { fittingParts, PART_KINDS, type PartChoice, type PartKind } from './parts.ts';

/** What a drive with its parts may cost. */
const PRICE_ROW = linear('', '', [0, 1e6], 0, 'Price of the drive with its parts, in your currency');

const ENTRIES: readonly string[] = [
  'preset',
  'motorCount',
  'own',
  'parts',
  'price',
  'gains',
] satisfies (keyof CandidateChoice)[];

/** Checks a drive that is to do a legal job. Anything may come in; what the candidate is made into is legal as a whole, or it is refused. */
export function checkCandidate(
  input: unknown,
  job: Job,
  presets: Presets,
): { readonly candidate: CandidateChoice } | Failure {
  if (!isRecord(input)) return failure('', input, `${isNot(input, 'a drive')} Give an object.`);
  const stray = Object.keys(input).find((name) => !ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('a part of a candidate', stray, ENTRIES, input[stray])] };
  }
  const {
    preset: id,
    motorCount,
    own: ownInput,
    parts: partsInput,
    price: priceInput,
    gains: gainInput,
  } = input;
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

  const lead = own.changes.lead ?? preset.parameters.lead ?? 0;
  const parts = checkParts(partsInput ?? {}, { lead });
  if ('problems' in parts) return parts;

  const price = priceInput === undefined ? null : checkNumber(priceInput, PRICE_ROW);
  if (price !== null && 'wrong' in price) return entryFailure('price', priceInput, price.wrong);

  const untuned: CandidateChoice = {
    preset: id as string,
    motorCount: count.legal,
    own: own.changes,
    ...(Object.keys(parts.parts).length > 0 ? { parts: parts.parts } : {}),
    ...(price === null ? {} : { price: price.legal }),
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

/** Checks the choice of guide, encoder, screw and its ends for a drive with this lead; 0: no screw. */
function checkParts(
  input: unknown,
  drive: { readonly lead: number },
): { readonly parts: PartChoice } | Failure {
  if (!isRecord(input))
    return entryFailure(
      'parts',
      input,
      `${isNot(input, 'an object')} Give a guide, an encoder, a screw, a support of its ends.`,
    );
  const stray = Object.keys(input).find((name) => !(PART_KINDS as readonly string[]).includes(name));
  if (stray !== undefined)
    return { problems: [unknownName('a part of a machine', stray, PART_KINDS, input[stray])] };
  for (const [kind, id] of Object.entries(input)) {
    const fitting = fittingParts(kind as PartKind, drive);
    if (fitting.length === 0) return entryFailure(kind, id, 'this drive has no screw. Leave it out.');
    if (!fitting.some((each) => each === id))
      return entryFailure(
        kind,
        id,
        `${shown(id)} does not fit this drive. Choose one of ${fitting.join(', ')}.`,
      );
  }
  return { parts: input as PartChoice };
}

function isDatasheetName(name: string): boolean {
  return (DATASHEET_NAMES as readonly string[]).includes(name);
}

/** A problem of a candidate with its place: “Candidate B: …”. */
export function ofCandidate(index: number, problem: Problem): Problem {
  return within(`candidates[${index}]`, problem, `Candidate ${candidateLetter(index)}`);
}
