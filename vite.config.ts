import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: false,
  // One script of 0.8 MB, a quarter of that compressed: the 3D library is needed from the first picture on.
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022', chunkSizeWarningLimit: 1000 },
  worker: { format: 'es' },
  optimizeDeps: { include: ['odex', 'comlink'] },
  server: { fs: { allow: ['..'] } },
  test: {
    root: '.',
    testTimeout: 60_000,
    // Elsewhere styles are of no interest to tests; these are a part of what a report holds.
    css: { include: [/tokens\.css/] },
    hookTimeout: 120_000,
    // The page runs in real time: its tests come after the others, two files at a time.
    projects: [
      {
        extends: true,
        test: {
          name: 'model',
          include: ['tests/**/*.test.ts'],
          exclude: ['tests/e2e/**'],
          // One for each core, the runner's own included, which has little to do; pure code needs no fresh start for each file.
          maxWorkers: '100%',
          isolate: false,
        },
      },
      {
        extends: true,
        test: {
          name: 'page',
          include: ['tests/e2e/**/*.test.ts'],
          testTimeout: 120_000,
          globalSetup: 'tests/e2e/build.ts',
          maxWorkers: 2,
          sequence: { groupOrder: 1 },
        },
      },
    ],
  },
});
