import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, vi } from 'vitest';
import { mergeResults, runShard } from '../../../../workers/entry/tolerance/toleranceCommand.ts';
import { bundled } from '../../../tools/bundle.mjs';

export const RUNS = 30;
export const folder = mkdtempSync(join(tmpdir(), 'waybench-'));
export const file = (name: string) => join(folder, name);
export const lines = (name: string) => readFileSync(file(name), 'utf8').split('\n').slice(0, -1);
export const runs = (name: string) =>
  lines(name)
    .slice(1)
    .map((line) => JSON.parse(line).run as number);
export const numbers = (from: number, to: number) =>
  Array.from({ length: to - from + 1 }, (_, k) => from + k);

/** A short cycle, so that many machines run in a second. */
export const STUDY = {
  waybench: 'tolerance study',
  version: 1,
  scene: {
    waybench: 'scene',
    version: 3,
    title: 'Short moves',
    preset: 'tubular',
    parameters: { program: 'shuttle', stroke: 0.004, dwell: 0.02, payload: 4, window: 1e-5 },
  },
  spreads: { payload: { kind: 'per cent', share: 0.2 }, sealFriction: { kind: 'per cent', share: 0.5 } },
  limits: { settlingTime: 0.015 },
  sampling: 'Latin hypercube',
  seed: 7,
  // More than run here: a run that is to be killed must not end before.
  runs: 5000,
};

/** Runs a command in this process, and what it prints. */
function printed(command: () => number): string {
  const log = vi.spyOn(console, 'log').mockImplementation(() => {});
  try {
    expect(command()).toBe(0);
    return log.mock.calls.join('\n');
  } finally {
    log.mockRestore();
  }
}

export const shard = (range: string, out: string) =>
  printed(() => runShard(file('study.json'), range, file(out)));
export const merged = (...names: string[]) => printed(() => mergeResults(names.map(file)));

/** The folder with the study and one run of it, for a test file. */
export function withStudy(): void {
  beforeAll(async () => {
    writeFileSync(file('study.json'), JSON.stringify(STUDY));
    await bundled('workers/entry/commandLine.ts');
    shard(`1..${RUNS}`, 'whole.jsonl');
  });
  afterAll(() => rmSync(folder, { recursive: true }));
}
