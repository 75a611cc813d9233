import { defineConfig } from 'vitest/config';
import randomRun from './tests/fuzz/lastRun.json' with { type: 'json' };
import soakRun from './tests/fuzz/lastSoak.json' with { type: 'json' };
import suiteRun from './tests/lastRun.json' with { type: 'json' };
import { contentPolicy } from './tests/tools/contentPolicy.mjs';
import { directImports } from './tests/tools/directImports.mjs';
import { libraries, licenceNotices } from './tests/tools/libraries.mjs';
import { OFFLINE_BUILD, offline } from './tests/tools/offline.mjs';

const HOUR = 3_600_000;

const PAGES = ['tests/e2e/**'];
/** What takes longer than a few seconds; a smaller version that can fail as well is in the test of the same name. */
const LONG = ['tests/**/*.long.test.ts'];

/** One thread for each core, the runner's own included, which has little to do; pure code needs no fresh start for each file. */
const MODEL = { include: ['tests/**/*.test.ts'], maxWorkers: '100%', isolate: false };

/** One browser for all, two pages at a time. */
const PAGE = {
  include: ['tests/e2e/**/*.test.ts'],
  globalSetup: 'tests/e2e/support/setup.ts',
  maxWorkers: 2,
  isolate: false,
  sequence: { groupOrder: 1 },
};

const LIBRARIES = libraries();
const notices = licenceNotices(LIBRARIES);

export default defineConfig(({ command, mode }) => ({
  root: 'src',
  base: './',
  publicDir: false,
  define: {
    __LIBRARIES__: JSON.stringify(LIBRARIES.map(({ text: _, ...library }) => library)),
    __TESTS__: JSON.stringify({ suite: suiteRun, random: randomRun, soak: soakRun }),
    // Only a built page has a script that keeps it offline.
    __IS_BUILT__: JSON.stringify(command === 'build'),
  },
  plugins: [contentPolicy(), notices.ofPage, offline(), ...(mode === 'test' ? [directImports()] : [])],
  // One script of 0.8 MB, a quarter of that compressed: the 3D library is needed from the first picture on.
  build: {
    outDir: '../dist',
    emptyOutDir: true,
    target: 'es2022',
    chunkSizeWarningLimit: 1000,
    rolldownOptions: OFFLINE_BUILD,
  },
  worker: { format: 'es', plugins: () => [notices.ofWorkers] },
  optimizeDeps: { include: ['odex', 'comlink'] },
  server: { fs: { allow: ['..'] } },
  test: {
    root: '.',
    // Nothing passes or fails by the clock: these only end what hangs. A page test waits as patience.ts says.
    testTimeout: HOUR,
    hookTimeout: HOUR,
    teardownTimeout: HOUR,
    expect: { poll: { timeout: HOUR } },
    // Elsewhere styles are of no interest to tests; these are a part of what a report holds.
    css: { include: [/tokens\.css/] },
    // `npm test` runs the first two, `npm run test:long` the others. Page tests come after those of the model.
    projects: [
      { extends: true, test: { ...MODEL, name: 'model', exclude: [...PAGES, ...LONG] } },
      { extends: true, test: { ...PAGE, name: 'page', exclude: LONG } },
      { extends: true, test: { ...MODEL, name: 'long', include: LONG, exclude: PAGES } },
      { extends: true, test: { ...PAGE, name: 'long-page', include: ['tests/e2e/**/*.long.test.ts'] } },
    ],
  },
}));
