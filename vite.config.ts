import { defineConfig } from 'vitest/config';

export default defineConfig({
  root: 'src',
  base: './',
  publicDir: false,
  build: { outDir: '../dist', emptyOutDir: true, target: 'es2022' },
  worker: { format: 'es' },
  optimizeDeps: { include: ['odex', 'comlink'] },
  server: { fs: { allow: ['..'] } },
  test: {
    root: '.',
    include: ['tests/**/*.test.ts'],
    testTimeout: 60_000,
  },
});
