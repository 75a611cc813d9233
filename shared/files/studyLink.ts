import { isParameterName, type ParameterChanges, parameterRow } from '../core/parameters/table.ts';
import { unknownName } from '../core/problem.ts';
import type { Presets } from '../core/scene.ts';
import { type CandidateChoice, candidateLetter, MAX_CANDIDATES, type Study } from '../study/candidate.ts';
import { isJobEntry } from '../study/checkJob.ts';
import { checkStudy, type StudyResult } from '../study/checkStudy.ts';
import { JOB_ENTRIES, jobRow } from '../study/job.ts';
import type { PartChoice } from '../study/parts.ts';
import { withFiltersOfToday } from './formerFilters.ts';
import type { Entries } from './jsonFile.ts';
import {
  openLinkText,
  type Pair,
  parseMoves,
  parseNumber,
  parseValue,
  writeLinkText,
  writeMoves,
} from './linkText.ts';
import { STUDY_KEY } from './studyLinkKey.ts';

/**
 * A study in the fragment of an address:
 *
 *     study=1&title=…&payload=5&…&moves=&A=tubular,2&A.own.forceConstant=62&A.gains.Kp=2800000&B=flat,1&sum=1k2j3h4
 *
 * Values are SI. Every value of the job is written, so that its meaning never changes.
 */
const STUDY_LINK_VERSION = 1;

const LETTERS = Array.from({ length: MAX_CANDIDATES }, (_, index) => candidateLetter(index));

export function writeStudyLink({ job, candidates }: Study): string {
  return writeLinkText(STUDY_KEY, STUDY_LINK_VERSION, [
    ['title', job.title],
    ...JOB_ENTRIES.map((name): Pair => [name, String(job.values[name])]),
    ['moves', writeMoves(job.moves)],
    ...candidates.flatMap((candidate, index) => candidatePairs(candidateLetter(index), candidate)),
  ]);
}

/** Reads a link with or without its leading #. Total: a legal study, or what is wrong. */
export function readStudyLink(fragment: string, presets: Presets): StudyResult {
  const opened = openLinkText(fragment, STUDY_KEY, STUDY_LINK_VERSION);
  if ('problems' in opened) return opened;
  const values: Entries = {};
  const candidates: Record<string, Entries> = {};
  const { title, moves, ...others } = opened.values;
  for (const [name, text] of Object.entries(others)) {
    const [letter = '', part, entry = ''] = name.split('.');
    if (isJobEntry(name)) {
      values[name] = parseValue(text, jobRow(name));
    } else if (!LETTERS.includes(letter)) {
      return { problems: [unknownName('an entry of a job', name, JOB_ENTRIES, text)] };
    } else if (part === undefined) {
      const [preset, count = ''] = text.split(',');
      candidates[letter] = { preset, motorCount: parseNumber(count), ...candidates[letter] };
    } else if (part === 'price') {
      candidates[letter] = { ...candidates[letter], price: parseNumber(text) };
    } else {
      const [[named = '', raw] = []] = Object.entries(withFiltersOfToday({ [entry]: text }));
      const value = isParameterName(named) ? parseValue(String(raw), parameterRow(named)) : raw;
      const before = candidates[letter]?.[part] as Entries | undefined;
      candidates[letter] = { ...candidates[letter], [part]: { ...before, [named]: value } };
    }
  }
  const inOrder = LETTERS.flatMap((letter) => candidates[letter] ?? []);
  return checkStudy({ job: { title, values, moves: parseMoves(moves) }, candidates: inOrder }, presets);
}

function candidatePairs(
  letter: string,
  { preset, motorCount, own, parts, price, gains }: CandidateChoice,
): Pair[] {
  const pairs = (part: string, changes: ParameterChanges | PartChoice) =>
    Object.entries(changes).map(([name, value]): Pair => [`${letter}.${part}.${name}`, String(value)]);
  return [
    [letter, `${preset},${motorCount}`],
    ...pairs('own', own),
    ...pairs('parts', parts ?? {}),
    ...(price === undefined ? [] : [[`${letter}.price`, String(price)] as Pair]),
    ...pairs('gains', gains ?? {}),
  ];
}
