import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, it } from 'vitest';
import { CHANNEL_NAMES } from '../shared/channels.ts';
import { ROOT } from './tools/sources.mjs';

const folder = mkdtempSync(join(tmpdir(), 'waybench-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** `npm run axis -- ...`, called from `folder`. */
function axis(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [join(ROOT, 'tests', 'tools', 'axis.mjs'), ...args],
    { cwd: ROOT, env: { ...process.env, INIT_CWD: folder }, encoding: 'utf8' },
  );
  return { status, stdout, stderr };
}

const shuttle = join(ROOT, 'scenes', 'mould-shuttle.json');

it('runs a scene, writes what it is asked for where it was called, and exits with 0', () => {
  const run = axis(shuttle, '--seconds', '0.05', '--csv', 'out.csv', '--json', 'out.json');
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  const lines = readFileSync(join(folder, 'out.csv'), 'utf8').trim().split('\n');
  expect(lines[0]).toBe(CHANNEL_NAMES.join(','));
  // 0.05 s at a position loop of 8 kHz.
  expect(lines).toHaveLength(1 + 400);
  expect(JSON.parse(readFileSync(join(folder, 'out.json'), 'utf8')).simulatedTime).toBeCloseTo(0.05, 9);
});

it('exits with 1 when the drive trips, and says why', () => {
  const run = axis(shuttle, '--seconds', '1', '--set', 'Kp=1e9');
  expect(run.status).toBe(1);
  expect(run.stdout).toMatch(/tripped/i);
});

it.each([
  ['a value out of range', ['--set', 'payload=-5'], /payload.*−5 kg.*2000 kg/],
  ['a misspelt parameter', ['--set', 'paylod=5'], /paylod.*payload/],
  ['a time that is none', ['--seconds', 'long'], /seconds.*long/],
  ['an option that is none', ['--secnds', '1'], /secnds/],
])('exits with 2 for %s, and names it', (_, args, words) => {
  const run = axis(shuttle, ...args);
  expect(run.status).toBe(2);
  expect(run.stderr.replace(/\s+/g, ' ')).toMatch(words);
});

it('exits with 2 for a scene file that is not there', () => {
  const run = axis('no-such-scene.json');
  expect(run.status).toBe(2);
  expect(run.stderr).toContain('no-such-scene.json');
});
