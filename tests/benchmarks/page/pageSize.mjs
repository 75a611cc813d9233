import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Scripts that the page may load before it runs, those of its workers included, compressed, bytes. */
export const FIRST_LOAD = 350_000;

/**
 * Scripts of a built page as a static host would send them, largest first.
 * @param {string} folder
 * @returns {{ name: string, bytes: number }[]}
 */
export function scriptSizes(folder) {
  return readdirSync(folder, { recursive: true })
    .map((name) => join(folder, name))
    .filter((file) => file.endsWith('.js') && statSync(file).isFile())
    .map((file) => ({ name: relative(folder, file), bytes: gzipSync(readFileSync(file)).length }))
    .sort((a, b) => b.bytes - a.bytes);
}
