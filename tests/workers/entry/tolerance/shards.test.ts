import { spawn, spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chdir, cwd, env, execPath } from 'node:process';
import { afterAll, beforeAll, describe, expect, it, vi } from 'vitest';
import { main } from '../../../../workers/entry/commandLine.ts';
import { mergeResults, runShard } from '../../../../workers/entry/tolerance/toleranceCommand.ts';
import { bundled } from '../../../tools/bundle.mjs';
import { ROOT } from '../../../tools/sources.mjs';

const RUNS = 30;
const folder = mkdtempSync(join(tmpdir(), 'waybench-'));
const file = (name: string) => join(folder, name);
const lines = (name: string) => readFileSync(file(name), 'utf8').split('\n').slice(0, -1);
const runs = (name: string) =>
  lines(name)
    .slice(1)
    .map((line) => JSON.parse(line).run as number);
const numbers = (from: number, to: number) => Array.from({ length: to - from + 1 }, (_, k) => from + k);

/** A short cycle, so that many machines run in a second. */
const STUDY = {
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

beforeAll(async () => {
  writeFileSync(file('study.json'), JSON.stringify(STUDY));
  await bundled('workers/entry/commandLine.ts');
  shard(`1..${RUNS}`, 'whole.jsonl');
});
afterAll(() => rmSync(folder, { recursive: true }));

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

const shard = (range: string, out: string) => printed(() => runShard(file('study.json'), range, file(out)));
const merged = (...names: string[]) => printed(() => mergeResults(names.map(file)));

it('a shard that is killed in the middle is carried on without a machine lost or twice', async () => {
  const axis = join(ROOT, 'tests', 'tools', 'axis.mjs');
  const process = spawn(execPath, [axis, 'study.json', '--runs', '1..5000', '--out', 'killed.jsonl'], {
    cwd: ROOT,
    env: { ...env, INIT_CWD: folder },
  });
  const ended = new Promise((resolve) => process.on('exit', (_, signal) => resolve(signal)));
  const isUnderWay = () => existsSync(file('killed.jsonl')) && runs('killed.jsonl').length > 3;
  await vi.waitFor(() => expect(isUnderWay()).toBe(true), { timeout: 600_000, interval: 5 });
  process.kill('SIGKILL');
  expect(await ended).toBe('SIGKILL');
  const left = runs('killed.jsonl').length;

  const range = `1..${left + 5}`;
  const whole = shard(range, 'unbroken.jsonl');
  expect(shard(range, 'killed.jsonl')).toBe(whole);
  expect(runs('killed.jsonl')).toEqual(numbers(1, left + 5));
  expect(lines('killed.jsonl')).toEqual(lines('unbroken.jsonl'));
  // Once more finds nothing to do.
  expect(shard(range, 'killed.jsonl')).toBe(whole);
  expect(lines('killed.jsonl')).toEqual(lines('unbroken.jsonl'));
});

it.each([
  ['within a result', 0.5],
  ['within the manifest', 0.01],
])('a file that was cut off %s is carried on', (_, share) => {
  const text = readFileSync(file('whole.jsonl'), 'utf8');
  writeFileSync(file('cut.jsonl'), text.slice(0, Math.floor(share * text.length)));
  shard(`1..${RUNS}`, 'cut.jsonl');
  expect(readFileSync(file('cut.jsonl'), 'utf8')).toBe(text);
});

it('shards merge in any order to what one run gives, and any of them can be made again', () => {
  const whole = merged('whole.jsonl');
  shard('1..12', 'a.jsonl');
  shard('13..20', 'b.jsonl');
  shard(`21..${RUNS}`, 'c.jsonl');
  for (const order of [
    ['a', 'b', 'c'],
    ['c', 'a', 'b'],
    ['b', 'c', 'a', 'b'],
  ])
    expect(merged(...order.map((name) => `${name}.jsonl`))).toBe(whole);
  const before = lines('b.jsonl');
  rmSync(file('b.jsonl'));
  expect(merged('a.jsonl', 'c.jsonl')).toMatch(/: 22 of 5000 machines/);
  shard('13..20', 'b.jsonl');
  expect(lines('b.jsonl')).toEqual(before);
});

it('runs over several slots of this computer as the documentation says, and merges', () => {
  const axis = `'${execPath}' '${join(ROOT, 'tests', 'tools', 'axis.mjs')}'`;
  const script = `printf '%s\\n' 1..10 11..20 21..${RUNS} | xargs -P 2 -I RANGE ${axis} study.json --runs RANGE --out slot-RANGE.jsonl`;
  const { status, stderr } = spawnSync('sh', ['-c', script], {
    cwd: folder,
    env: { ...env, INIT_CWD: folder },
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  const slots = ['slot-21..30.jsonl', 'slot-1..10.jsonl', 'slot-11..20.jsonl'];
  expect(merged(...slots)).toBe(merged('whole.jsonl'));
});

describe('is refused, with what to do', () => {
  it.each([
    [
      'a range beyond the study',
      ['study.json', '--runs', '1..5001', '--out', 'x.jsonl'],
      /--runs is 1\.\.5001; give .* within 1\.\.5000/,
    ],
    ['a range backwards', ['study.json', '--runs', '9..3', '--out', 'x.jsonl'], /--runs is 9\.\.3/],
    ['no file for the results', ['study.json', '--runs', '1..3'], /Say with --out/],
    [
      'a file of something else',
      ['study.json', '--runs', '1..3', '--out', 'study.json'],
      /study\.json holds something else.*--out/,
    ],
    [
      'the results of another study',
      ['other.json', '--runs', '1..3', '--out', 'whole.jsonl'],
      /whole\.jsonl holds something else/,
    ],
    [
      'results that are none',
      ['--merge', 'study.json'],
      /Cannot read results in study\.json|holds no results/,
    ],
    [
      'an option of scenes',
      ['study.json', '--runs', '1..3', '--seconds', '1'],
      /--seconds is for a scene: leave it out with --runs/,
    ],
  ])('%s', async (_, args, message) => {
    writeFileSync(file('other.json'), JSON.stringify({ ...STUDY, seed: 8 }));
    const error = vi.spyOn(console, 'error').mockImplementation(() => {});
    const home = cwd();
    chdir(folder);
    try {
      expect(await main(args)).toBe(2);
      expect(error.mock.calls.join('\n')).toMatch(message);
    } finally {
      chdir(home);
      error.mockRestore();
    }
  });

  it('a result that two files state otherwise', () => {
    const [manifest, ...results] = lines('whole.jsonl');
    const changed = results.map((line) => line.replace('"peakCurrent":', '"peakCurrent":1'));
    writeFileSync(file('changed.jsonl'), [manifest, ...changed, ''].join('\n'));
    expect(() => mergeResults([file('whole.jsonl'), file('changed.jsonl')])).toThrow(
      /machine \d+ came out otherwise/,
    );
  });
});
