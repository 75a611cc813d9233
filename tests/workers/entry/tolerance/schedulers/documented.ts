import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from '../../../../tools/sources.mjs';

/** What DEVELOPERS.md says of tolerance studies that run in parts: machines in a part, and in all of them. */
export const PART = 500;
export const ALL = 10_000;

const text = readFileSync(join(ROOT, 'DEVELOPERS.md'), 'utf8');
const section = text.split(/^## /m).find((part) => part.startsWith('Tolerance studies'))!;
const code = section
  .split('\n')
  .filter((line) => line.startsWith('    '))
  .map((line) => line.slice(4));

/** The one line of it that holds `word`. */
function documented(word: string): string {
  const found = code.filter((line) => line.includes(word));
  if (found.length !== 1) throw new Error(`${found.length} lines of DEVELOPERS.md hold ${word}`);
  return found[0]!;
}

export const LINES = {
  parallel: documented('| parallel '),
  xargs: documented('| xargs '),
  merge: documented('--merge'),
};

/** The script of the job array, which is the last of the code there. */
export const ARRAY_SCRIPT = code.slice(code.indexOf('#!/bin/sh')).join('\n');

/** The same with `count` parts of `part` machines. */
export function scaledTo(script: string, count: number, part: number): string {
  return script
    .replace(/\bseq 1 500 9501\b/, `seq 1 ${part} ${(count - 1) * part + 1}`)
    .replace(/\* 500\b/, `* ${part}`)
    .replace(/\+ ?499\b/, `+${part - 1}`);
}
