import type { Entries } from '../jsonFile.ts';
import {
  openLinkText,
  type Pair,
  parseMoves,
  parseNumber,
  parseValue,
  writeLinkText,
  writeMoves,
} from '../linkText.ts';
import { isParameterName, type ParameterChanges, parameterRow } from '../parameters/table.ts';
import { unknownName } from '../problem.ts';
import type { Kit } from '../scene.ts';
import { isJobEntry } from './checkJob.ts';
import { checkStudy, type StudyResult } from './checkStudy.ts';
import { JOB_ENTRIES, jobRow } from './job.ts';
import { type LaneChoice, laneLetter, MOST_LANES, type Study } from './lane.ts';
import { STUDY_KEY } from './linkKey.ts';

/**
 * A study in the fragment of an address:
 *
 *     study=1&title=…&payload=5&…&moves=&A=tubular,2&A.own.forceConstant=62&A.gains.Kp=2800000&B=flat,1&sum=1k2j3h4
 *
 * Values are SI. Every value of the job is written, so that it means the same for ever.
 */
export const STUDY_LINK_VERSION = 1;

const LETTERS = Array.from({ length: MOST_LANES }, (_, index) => laneLetter(index));

export function writeStudyLink({ job, lanes }: Study): string {
  return writeLinkText(STUDY_KEY, STUDY_LINK_VERSION, [
    ['title', job.title],
    ...JOB_ENTRIES.map((name): Pair => [name, String(job.values[name])]),
    ['moves', writeMoves(job.moves)],
    ...lanes.flatMap((lane, index) => lanePairs(laneLetter(index), lane)),
  ]);
}

/** Reads a link with or without its leading #. Total: a legal study, or what is wrong. */
export function readStudyLink(fragment: string, kits: Readonly<Record<string, Kit>>): StudyResult {
  const opened = openLinkText(fragment, STUDY_KEY, STUDY_LINK_VERSION);
  if ('problems' in opened) return opened;
  const values: Entries = {};
  const lanes: Record<string, Entries> = {};
  const { title, moves, ...others } = opened.values;
  for (const [name, text] of Object.entries(others)) {
    const [letter = '', part, entry = ''] = name.split('.');
    if (isJobEntry(name)) {
      values[name] = parseValue(text, jobRow(name));
    } else if (!LETTERS.includes(letter)) {
      return { problems: [unknownName('an entry of a job', name, JOB_ENTRIES, text)] };
    } else if (part === undefined) {
      const [kit, count = ''] = text.split(',');
      lanes[letter] = { kit, motorCount: parseNumber(count), ...lanes[letter] };
    } else {
      const value = isParameterName(entry) ? parseValue(text, parameterRow(entry)) : text;
      const before = lanes[letter]?.[part] as Entries | undefined;
      lanes[letter] = { ...lanes[letter], [part]: { ...before, [entry]: value } };
    }
  }
  const inOrder = LETTERS.flatMap((letter) => lanes[letter] ?? []);
  return checkStudy({ job: { title, values, moves: parseMoves(moves) }, lanes: inOrder }, kits);
}

function lanePairs(letter: string, { kit, motorCount, own, gains }: LaneChoice): Pair[] {
  const pairs = (part: string, changes: ParameterChanges) =>
    Object.entries(changes).map(([name, value]): Pair => [`${letter}.${part}.${name}`, String(value)]);
  return [[letter, `${kit},${motorCount}`], ...pairs('own', own), ...pairs('gains', gains ?? {})];
}
