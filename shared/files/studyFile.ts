import { unknownName } from '../core/problem.ts';
import type { Presets } from '../core/scene.ts';
import { MODEL_VERSION } from '../core/version.ts';
import type { Study } from '../study/candidate.ts';
import { checkStudy, type StudyResult } from '../study/checkStudy.ts';
import { openFile } from './jsonFile.ts';
import { migrateStudy } from './migrate.ts';

/**
 * A study file is JSON, all values SI:
 *
 *     { "waybench": "study", "version": 2, "model": 1, "title": "…", "values": { "payload": 5, … }, "moves": [ … ],
 *       "candidates": [ { "preset": "tubular", "motorCount": 1, "own": { "forceConstant": 62 }, "gains": null }, … ], "ranges": { "payload": 0.05, … } }
 *
 * What is written holds every value of the job; a drive is the name of its preset with what was typed over it; ranges are left out where they
 * are the usual ones.
 */
const STUDY_VERSION = 2;

const FILE_ENTRIES = ['waybench', 'version', 'title', 'values', 'moves', 'candidates', 'ranges'];

/** Reads the text of a study file, or its parsed value. Total: a legal study, or what is wrong. */
export function readStudy(input: unknown, presets: Presets): StudyResult {
  const opened = openFile(input, 'study', STUDY_VERSION);
  if ('problems' in opened) return opened;
  const {
    waybench: _kind,
    version: _version,
    candidates,
    ranges,
    ...job
  } = migrateStudy(opened.entries, opened.version);
  const stray = Object.keys(job).find((name) => !FILE_ENTRIES.includes(name));
  if (stray !== undefined) {
    return { problems: [unknownName('an entry of a study file', stray, FILE_ENTRIES, job[stray])] };
  }
  return checkStudy({ job, candidates, ranges }, presets);
}

/** Reads back as the same study, number by number. */
export function writeStudy({ job, candidates, ranges }: Study): string {
  const { title, values, moves } = job;
  const entries = {
    waybench: 'study',
    version: STUDY_VERSION,
    model: MODEL_VERSION,
    title,
    values,
    moves,
    candidates,
    ranges,
  };
  return `${JSON.stringify(entries, null, 2)}\n`;
}
