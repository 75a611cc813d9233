import { basename, dirname, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { build } from 'vite';
import { builtFrom, ROOT } from './sources.mjs';

/**
 * Bundles a TypeScript module of this project for Node, only if a source has changed since the last time. `entry` is
 * relative to the root of the project.
 * @param {string} entry
 * @returns {Promise<URL>} where the bundled module is
 */
export async function bundled(entry) {
  const name = basename(entry, '.ts');
  const folder = await builtFrom(name, ['shared', 'scenes', 'workers', dirname(entry)], (outDir) =>
    build({
      configFile: false,
      root: ROOT,
      logLevel: 'warn',
      ssr: { noExternal: true },
      build: {
        ssr: join(ROOT, entry),
        outDir,
        target: 'node20',
        rolldownOptions: { output: { entryFileNames: '[name].mjs', chunkFileNames: '[name].mjs' } },
      },
    }),
  );
  return pathToFileURL(join(folder, `${name}.mjs`));
}

/**
 * The same, imported.
 * @param {string} entry
 */
export async function bundle(entry) {
  const { href } = await bundled(entry);
  return import(href);
}
