import { readFileSync, writeFileSync } from 'node:fs';
import { type Problem, problemTexts } from '../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';

/** How the command ends, for scripts. */
export const DONE = 0;
export const TRIPPED = 1;
export const BAD_INPUT = 2;
/** The energy account does not balance: the figures are not to be trusted. */
export const UNTRUSTED = 4;

/** Something a person typed that cannot be done; the message says how to fix it. */
export class BadInput extends Error {}

/** A line for each problem, with where it was written. */
export function badEntries(where: string, problems: readonly Problem[]): BadInput {
  return new BadInput(
    problemTexts(problems, AS_WRITTEN)
      .map((text) => `${where}: ${text}`)
      .join('\n'),
  );
}

/** The text of a file; `what` names it in the message. */
export function read(path: string, what: string): string {
  try {
    return readFileSync(path, 'utf8');
  } catch {
    throw new BadInput(`Cannot read the ${what} ${path}.`);
  }
}

export function write(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch {
    throw new BadInput(`Cannot write ${path}.`);
  }
}
