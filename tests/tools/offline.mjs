import { createHash } from 'node:crypto';
import { readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { ROOT } from './sources.mjs';

/** The script that keeps the page offline; it stands beside the page, since it may only keep what is below it. */
const SCRIPT = 'offlineWorker.js';
const MANIFEST = 'manifest.webmanifest';
const ICON = 'icon.svg';

const manifest = () => ({
  name: 'Waybench',
  short_name: 'Waybench',
  description: 'One machine axis, simulated in real time',
  start_url: './',
  display: 'standalone',
  background_color: '#f9f8f4',
  theme_color: '#28485a',
  icons: [{ src: `./${ICON}`, sizes: 'any', type: 'image/svg+xml', purpose: 'any' }],
});

/** What the build needs to know of the script: where it comes from, and that its name stays. */
export const OFFLINE_BUILD = {
  input: { index: join(ROOT, 'src/index.html'), offlineWorker: join(ROOT, 'workers/entry/offlineWorker.ts') },
  output: {
    entryFileNames: ({ name }) => (name === 'offlineWorker' ? SCRIPT : 'assets/[name]-[hash].js'),
  },
};

/** Makes the built page installable, and writes into the script that keeps it offline what there is to keep. */
export function offline() {
  return {
    name: 'offline',
    apply: 'build',
    transformIndexHtml: () => [
      { tag: 'link', attrs: { rel: 'manifest', href: `./${MANIFEST}` }, injectTo: 'head' },
    ],
    generateBundle() {
      this.emitFile({ type: 'asset', fileName: MANIFEST, source: JSON.stringify(manifest(), null, 2) });
      const source = readFileSync(join(ROOT, 'src/ui/look', ICON));
      this.emitFile({ type: 'asset', fileName: ICON, source });
    },
    // Once everything is written, that of other plugins too.
    writeBundle: {
      order: 'post',
      handler({ dir }) {
        const files = filesIn(dir).filter((file) => file !== SCRIPT);
        const hash = createHash('sha256');
        for (const file of files) hash.update(file).update(readFileSync(join(dir, file)));
        const path = join(dir, SCRIPT);
        // A host shows the page under its folder; some answer its own name with a way back there.
        const kept = files.map((file) => (file === 'index.html' ? './' : file));
        const code = readFileSync(path, 'utf8')
          .replace('__BUILT_FILES__', JSON.stringify(kept))
          .replace('__BUILD__', JSON.stringify(hash.digest('hex').slice(0, 12)));
        writeFileSync(path, code);
      },
    },
  };
}

/** Every file below a folder, relative to it, with slashes, in alphabetical order. */
function filesIn(dir) {
  return readdirSync(dir, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile())
    .map((entry) =>
      join(entry.parentPath ?? entry.path, entry.name)
        .slice(dir.length + 1)
        .replaceAll('\\', '/'),
    )
    .sort();
}
