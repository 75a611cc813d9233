import { readdirSync, readFileSync, statSync } from 'node:fs';
import { join, relative } from 'node:path';
import { gzipSync } from 'node:zlib';

/** Scripts of a built page as a static host would send them: [{ name, bytes }], largest first. */
export function scriptSizes(folder) {
  return readdirSync(folder, { recursive: true })
    .map((name) => join(folder, name))
    .filter((file) => file.endsWith('.js') && statSync(file).isFile())
    .map((file) => ({ name: relative(folder, file), bytes: gzipSync(readFileSync(file)).length }))
    .sort((a, b) => b.bytes - a.bytes);
}
