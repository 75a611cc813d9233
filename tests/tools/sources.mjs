import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, rmSync, statSync } from 'node:fs';
import { dirname, join, posix } from 'node:path';
import { fileURLToPath } from 'node:url';

export const ROOT = dirname(dirname(dirname(fileURLToPath(import.meta.url))));

const CACHE = join(ROOT, 'node_modules', '.cache', 'waybench');

/**
 * All files under the given files and folders of the project, as sorted paths relative to its root.
 * @param {...string} paths
 * @returns {string[]}
 */
export function filesUnder(...paths) {
  return paths
    .flatMap((path) => {
      const full = join(ROOT, path);
      if (!existsSync(full)) return [];
      if (!statSync(full).isDirectory()) return [path];
      return filesUnder(...readdirSync(full).map((name) => posix.join(path, name)));
    })
    .sort();
}

/**
 * Folder with what `build(folder)` makes of `sources`; built only if their content has changed since the last time.
 * A build is moved into place when it is complete, so that two runs at the same time cannot disturb each other.
 * @param {string} name
 * @param {string[]} sources
 * @param {(folder: string) => Promise<unknown>} build
 */
export async function builtFrom(name, sources, build) {
  const folder = join(CACHE, `${name}-${contentHash(sources)}`);
  if (existsSync(folder)) return folder;
  const unfinished = `${folder}.${process.pid}`;
  mkdirSync(CACHE, { recursive: true });
  await build(unfinished);
  removeOldBuilds(name);
  if (existsSync(folder)) rmSync(unfinished, { recursive: true });
  else renameSync(unfinished, folder);
  return folder;
}

/** A build that is an hour old may go; a younger one may still be in use by another run. */
function removeOldBuilds(name) {
  for (const entry of readdirSync(CACHE)) {
    const path = join(CACHE, entry);
    if (entry.startsWith(`${name}-`) && Date.now() - statSync(path).mtimeMs > 3_600_000)
      rmSync(path, { recursive: true });
  }
}

function contentHash(sources) {
  const hash = createHash('sha256');
  for (const file of filesUnder(...sources, 'package-lock.json', 'vite.config.ts'))
    hash.update(file).update(readFileSync(join(ROOT, file)));
  return hash.digest('hex').slice(0, 16);
}
