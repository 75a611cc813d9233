import { type ChildProcess, spawn, spawnSync } from 'node:child_process';
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { join } from 'node:path';
import { env, kill, platform } from 'node:process';
import { afterAll, beforeAll, expect, it, vi } from 'vitest';
import { ROOT } from '../../../../tools/sources.mjs';
import { STUDY } from '../shardFolder.ts';
import { ARRAY_SCRIPT, LINES, scaledTo } from './documented.ts';

/** Within the project, so that npm finds it as it does for the reader of the documentation. */
mkdirSync(join(ROOT, 'tests', 'out'), { recursive: true });
const home = mkdtempSync(join(ROOT, 'tests', 'out', 'parts-'));
const PARTS = 3;
/** Machines in one: enough of them that a part is not done before it is killed. */
const PART = 100;

const has = (program: string) => spawnSync('sh', ['-c', `command -v ${program}`]).status === 0;
const settings = (more: NodeJS.ProcessEnv = {}) => ({
  ...env,
  PARALLEL_HOME: join(home, 'parallel'),
  ...more,
});

function folder(name: string): string {
  const path = join(home, name);
  mkdirSync(path);
  writeFileSync(join(path, 'study.json'), JSON.stringify({ ...STUDY, runs: PARTS * PART }));
  return path;
}

function sh(script: string, cwd: string, more?: NodeJS.ProcessEnv): number | null {
  const { status, stderr } = spawnSync('sh', ['-c', script], { cwd, env: settings(more), encoding: 'utf8' });
  expect(stderr).toBe('');
  return status;
}

function ended(process: ChildProcess): Promise<number | null> {
  return new Promise((resolve) => process.on('exit', resolve));
}

const machinesIn = (path: string) =>
  existsSync(path) ? readFileSync(path, 'utf8').split('\n').slice(1, -1).length : 0;

/** The one process that runs the program of this line of words, or undefined. */
function processWith(...words: string[]): number | undefined {
  const runs = (id: string) => {
    try {
      const line = readFileSync(`/proc/${id}/cmdline`, 'utf8').split('\0');
      return /\bnode$/.test(line[0]!) && words.every((word) => line.includes(word));
    } catch {
      return false;
    }
  };
  const id = readdirSync('/proc').find((name) => /^\d+$/.test(name) && runs(name));
  return id === undefined ? undefined : Number(id);
}

let unsharded = '';

beforeAll(() => {
  const path = folder('unsharded');
  const all = `npm run -s axis -- study.json --runs 1..${PARTS * PART} --out all.jsonl --json summary.json`;
  expect(sh(all, path)).toBe(0);
  unsharded = readFileSync(join(path, 'summary.json'), 'utf8');
});
afterAll(() => rmSync(home, { recursive: true }));

function expectMerged(path: string): void {
  expect(sh(LINES.merge, path)).toBe(0);
  expect(readFileSync(join(path, 'summary.json'), 'utf8')).toBe(unsharded);
}

it('under GNU parallel: a part that is killed is carried on by the same line, and all of them merge', async (context) => {
  context.skip(!has('parallel'), 'GNU parallel is not installed');
  context.skip(platform !== 'linux', 'finds the process to kill as Linux shows it');
  const path = folder('parallel');
  const line = scaledTo(LINES.parallel, PARTS, PART);
  const killed = join(path, 'part-101.jsonl');

  const run = spawn('sh', ['-c', line], { cwd: path, env: settings(), stdio: 'ignore' });
  const end = ended(run);
  await vi.waitFor(() => expect(machinesIn(killed)).toBeGreaterThan(3), { timeout: 3_600_000, interval: 5 });
  kill(processWith('--runs', '101..200', 'part-101.jsonl')!, 'SIGKILL');
  // Its status is the number of parts that failed.
  expect(await end).toBe(1);
  expect(machinesIn(killed)).toBeLessThan(PART);
  expect(machinesIn(join(path, 'part-1.jsonl'))).toBe(PART);
  expect(machinesIn(join(path, 'part-201.jsonl'))).toBe(PART);

  expect(sh(line, path)).toBe(0);
  const parts = readFileSync(join(path, 'parts.log'), 'utf8').match(/part-\d+/g)!;
  expect(parts.toSorted()).toEqual(['part-1', 'part-101', 'part-101', 'part-201']);
  expect(machinesIn(killed)).toBe(PART);
  expectMerged(path);
});

it('over the slots of this computer by xargs', () => {
  const path = folder('xargs');
  expect(sh(scaledTo(LINES.xargs, PARTS, PART), path)).toBe(0);
  expectMerged(path);
});

it('as the tasks of a job array', () => {
  const path = folder('array');
  writeFileSync(join(path, 'array.sh'), scaledTo(ARRAY_SCRIPT, PARTS, PART));
  for (let task = 0; task < PARTS; task++)
    expect(sh('sh array.sh', path, { SLURM_ARRAY_TASK_ID: `${task}` })).toBe(0);
  expectMerged(path);
});
