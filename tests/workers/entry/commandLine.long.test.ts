import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { writeStudy } from '../../../shared/files/studyFile.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';
import { ROOT } from '../../tools/sources.mjs';
import { launched } from './launched.ts';

const folder = mkdtempSync(join(tmpdir(), 'waybench-'));
afterAll(() => rmSync(folder, { recursive: true }));

it('simulates a study, prints every figure of its candidates and exits with 0', () => {
  const small = { travel: 0.1, stroke: 0.05, scanLength: 0.01, window: 2e-5 };
  const values = { ...defaultJobValues(), ...small, dailyTime: 3600 };
  const job = { title: 'Move a mould', values, moves: [] };
  const candidate = { preset: 'tubular', motorCount: 1, own: {}, gains: { forceBias: 0 } };
  writeFileSync(join(folder, 'study.json'), writeStudy({ job, candidates: [candidate] }));
  const run = launched(folder, 'study.json', '--study', '--draws', '2', '--json', 'judged.json');
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  expect(run.stdout).toMatch(/^Move a mould\n {2}A {2}Tubular motor, ironless\n/);
  expect(run.stdout).toMatch(/\n {2}Settling time +\S/);
  const { candidates, verdict, confidence } = JSON.parse(readFileSync(join(folder, 'judged.json'), 'utf8'));
  expect(candidates[0].outcome.heat.hours).toBe(1);
  expect(run.stdout).toContain(verdict.choice);
  expect([confidence.calculated.drawn, confidence.simulated.drawn]).toEqual([1000, 2]);
  expect(run.stdout).toMatch(
    /\nOf 2 jobs drawn within these ranges and simulated, .* in .* % confidence interval/,
  );
});

it('exits with 1 when the winding does not stand the hours', () => {
  const limits = ['--set', 'foldbackTemperature=40', '--set', 'windingLimit=60'];
  const duty = ['--set', 'acceleration=40', '--set', 'jerk=4000', '--set', 'dwell=0.01'];
  const run = launched(
    folder,
    join(ROOT, 'scenes', 'mould-shuttle.json'),
    '--hours',
    '1',
    ...limits,
    ...duty,
  );
  expect(run.status).toBe(1);
  expect(run.stdout).toMatch(/After [\d.]+ (min|h) the winding passes 40\.0 °C/);
  expect(run.stdout).toMatch(/The axis cannot do this duty\./);
});

it('keeps a drive that the sizing rules out in its column with the reason, and does not tune it', () => {
  const small = { travel: 0.1, stroke: 0.05, window: 2e-5, payload: 400, moveTime: 0.15, dailyTime: 3600 };
  const job = { title: 'Move a heavy mould', values: { ...defaultJobValues(), ...small }, moves: [] };
  const drive = (preset: string) => ({ preset, motorCount: 1, own: {}, gains: null });
  const path = join(folder, 'heavy.json');
  writeFileSync(path, writeStudy({ job, candidates: [drive('u-channel-100'), drive('screw-160')] }));
  const run = launched(folder, 'heavy.json', '--study');
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  expect(run.stdout).toMatch(/^\s+A\s+B\s+asked$/m);
  expect(run.stdout).toMatch(/Neither drive meets every requirement of the job\..*by calculation/);
});
