import { openFile } from '../jsonFile.ts';
import { unknownName } from '../problem.ts';
import type { Kit } from '../scene.ts';
import { checkStudy, type StudyResult } from './checkStudy.ts';
import type { Study } from './lane.ts';

/**
 * A study file is JSON, all values SI:
 *
 *     { "waybench": "study", "version": 1, "title": "…", "values": { "payload": 5, … }, "moves": [ … ],
 *       "lanes": [ { "kit": "tubular", "motorCount": 1, "own": { "forceConstant": 62 }, "gains": null }, … ] }
 *
 * What is written holds every value of the job; a drive is the name of its kit with what was typed over it.
 */
export const STUDY_VERSION = 1;

const FILE_ENTRIES = ['waybench', 'version', 'title', 'values', 'moves', 'lanes'];

/** Reads the text of a study file, or its parsed value. Total: a legal study, or what is wrong. */
export function readStudy(input: unknown, kits: Readonly<Record<string, Kit>>): StudyResult {
  const opened = openFile(input, 'study', STUDY_VERSION);
  if ('problems' in opened) return opened;
  const { waybench: _kind, version: _version, lanes, ...job } = opened.entries;
  const stray = Object.keys(job).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a study file', stray, FILE_ENTRIES, job[stray])] };
  }
  return checkStudy({ job, lanes }, kits);
}

/** Reads back as the same study, number by number. */
export function writeStudy({ job, lanes }: Study): string {
  const { title, values, moves } = job;
  const entries = { waybench: 'study', version: STUDY_VERSION, title, values, moves, lanes };
  return `${JSON.stringify(entries, null, 2)}\n`;
}
