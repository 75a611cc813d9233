import { join } from 'node:path';
import { build, preview } from 'vite';
import { builtFrom, ROOT } from './sources.mjs';

const page = { configFile: join(ROOT, 'vite.config.ts'), root: join(ROOT, 'src'), logLevel: 'warn' };

/** Folder of the built page, as `npm run build` makes it; built only if a source has changed since the last time. */
export function builtPage() {
  return builtFrom('page', ['src', 'shared', 'scenes', 'workers', 'tests/tools'], (outDir) =>
    build({ ...page, build: { outDir } }),
  );
}

/**
 * Serves the built page from this machine only, on a free port: its address, its folder, and how to stop it. As on a plain
 * static host a missing file is missing; the default would answer with the page.
 */
export async function servePage() {
  const outDir = await builtPage();
  const server = await preview({
    ...page,
    appType: 'mpa',
    build: { outDir },
    preview: { host: '127.0.0.1', port: 0, open: false },
  });
  return { url: server.resolvedUrls.local[0], folder: outDir, close: () => server.close() };
}
