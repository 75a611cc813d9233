import { writeFileSync } from 'node:fs';

/** How the command ends, for scripts. */
export const DONE = 0;
export const TRIPPED = 1;
export const BAD_INPUT = 2;

/** Something a person typed that cannot be done; the message says how to mend it. */
export class BadInput extends Error {}

export function write(path: string, text: string): void {
  try {
    writeFileSync(path, text);
  } catch {
    throw new BadInput(`Cannot write ${path}.`);
  }
}
