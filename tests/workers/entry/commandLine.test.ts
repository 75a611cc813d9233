import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { chdir, cwd } from 'node:process';
import { afterAll, expect, it, vi } from 'vitest';
import { CHANNEL_NAMES } from '../../../shared/core/channels.ts';
import { main } from '../../../workers/entry/commandLine.ts';
import { CsvWriter } from '../../../workers/entry/csvWriter.ts';
import { Audit } from '../../../workers/model/audit.ts';
import { ROOT } from '../../tools/sources.mjs';
import { launched } from './launched.ts';

const folder = mkdtempSync(join(tmpdir(), 'waybench-'));
afterAll(() => rmSync(folder, { recursive: true }));

/** `npm run axis -- ...`, called from `folder`, in this process. */
async function axis(...args: string[]) {
  const [said, complained]: [string[], string[]] = [[], []];
  const log = vi.spyOn(console, 'log').mockImplementation((text) => void said.push(`${text}\n`));
  const error = vi.spyOn(console, 'error').mockImplementation((text) => void complained.push(`${text}\n`));
  const home = cwd();
  chdir(folder);
  try {
    const status = await main(args);
    return { status, stdout: said.join(''), stderr: complained.join('') };
  } finally {
    chdir(home);
    log.mockRestore();
    error.mockRestore();
  }
}

const shuttle = join(ROOT, 'scenes', 'mould-shuttle.json');

it('runs a scene, writes what it is asked for where it was called, and exits with 0', () => {
  const run = launched(folder, shuttle, '--seconds', '0.05', '--csv', 'out.csv', '--json', 'out.json');
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  const lines = readFileSync(join(folder, 'out.csv'), 'utf8').trim().split('\n');
  expect(lines[0]).toBe(CHANNEL_NAMES.join(','));
  // 0.05 s at a position loop of 8 kHz.
  expect(lines).toHaveLength(1 + 400);
  expect(JSON.parse(readFileSync(join(folder, 'out.json'), 'utf8')).simulatedTime).toBeCloseTo(0.05, 9);
});

it('runs hours of a scene, writes what it is asked for, prints the verdict and exits with 0', async () => {
  const run = await axis(
    shuttle,
    '--hours',
    '2',
    '--growth-target',
    '5e-6',
    '--csv',
    'h.csv',
    '--json',
    'h.json',
  );
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  const [head, ...lines] = readFileSync(join(folder, 'h.csv'), 'utf8').trim().split('\n');
  expect(head).toMatch(/^time,winding,carrier,table,screw,/);
  // Every minute, the first and the last included.
  expect(lines).toHaveLength(1 + 120);
  expect(JSON.parse(readFileSync(join(folder, 'h.json'), 'utf8')).hours).toBe(2);
  expect(run.stdout).toMatch(/\n +0\.00 s .*\n +1\.00 h .*\n +2\.00 h .*\n +settled /);
  expect(run.stdout).toMatch(/Thermal growth at the tool within ±5\.00 µm: met in room air/);
  expect(run.stdout).toMatch(/Neither a coolant nor a chiller is needed\./);
  expect(run.stdout).toMatch(/The axis can do this duty\./);
});

it('runs a scene by the engine that is asked for, and says which it was', async () => {
  const run = await axis(shuttle, '--seconds', '0.01', '--engine', 'batch', '--json', 'batch.json');
  expect(run.status).toBe(0);
  expect(run.stdout).toMatch(/\n +Engine +batch\n/);
  expect(JSON.parse(readFileSync(join(folder, 'batch.json'), 'utf8')).engine).toBe('batch');
  const stiff = ['--set', 'linkStiffness=2e9', '--set', 'coilMass=0.05', '--set', 'currentRate=4000'];
  const left = await axis(shuttle, '--seconds', '0.001', '--engine', 'batch', ...stiff);
  expect(left.stdout).toMatch(/\n +Engine +odex: this plant is too stiff for batch\n/);
  expect((await axis(shuttle, '--seconds', '0.001')).stdout).toMatch(/\n +Engine +odex\n/);
});

it('exits with 1 when the drive trips, and says why', async () => {
  const run = await axis(shuttle, '--seconds', '1', '--set', 'Kp=1e9');
  expect(run.status).toBe(1);
  expect(run.stdout).toMatch(/tripped/i);
});

it('words a trip in SI, as values are typed, and writes why into the summary', async () => {
  const run = await axis(shuttle, '--set', 'followingErrorLimit=0.000002', '--json', 'trip.json');
  expect(run.status).toBe(1);
  expect(run.stdout).toMatch(/TRIPPED \(following error\) at .*: The following error passed 2·10⁻⁶ m\./);
  expect(JSON.parse(readFileSync(join(folder, 'trip.json'), 'utf8')).trip).toMatchObject({
    kind: 'following error',
    limit: 2e-6,
    message: expect.stringMatching(/^The following error passed 2·10⁻⁶ m\./),
  });
});

it.each([
  ['an engine that there is not', ['--engine', 'fast'], /--engine is fast; give one of odex, batch\./],
  ['an engine for hours', ['--engine', 'batch', '--hours', '1'], /--engine is for --seconds/],
  ['a value out of range', ['--set', 'payload=-5'], /--set: payload: −5 kg.*2000 kg/],
  ['a length out of range', ['--set', 'stroke=3'], /--set: stroke: 3 m is outside −2 m to 2 m/],
  [
    'values that contradict each other',
    ['--set', 'travelMax=0.1'],
    /--set: The shuttle would reach 0\.125 m, outside the travel, −0\.3 m to 0\.1 m\. .* move start/,
  ],
  ['a misspelt parameter', ['--set', 'paylod=5'], /paylod.*payload/],
  ['a parameter that every object has', ['--set', '__proto__=5'], /"__proto__" is not a parameter/],
  ['a parameter that is set twice', ['--set', 'payload=5', '--set', 'payload=6'], /payload is set twice/],
  ['a word for a number', ['--set', 'Kp=abc'], /Kp: "abc" is not a number/],
  ['a hexadecimal number', ['--set', 'Kp=0x10'], /Kp: "0x10" is not a number/],
  ['a number beyond every range', ['--set', 'Kp=1e308'], /Kp: 1\.?0*·10³⁰⁸ N\/m is outside/],
  ['hours of a drive that is off', ['--hours', '1', '--set', 'drive=off'], /drive is off: .* no duty/],
  ['hours of no moves', ['--hours', '1', '--set', 'program=list'], /no moves/],
  ['a time that is none', ['--seconds', 'long'], /seconds.*long/],
  ['a hexadecimal time', ['--seconds', '0x10'], /seconds is 0x10; give a number/],
  ['hexadecimal hours', ['--hours', '0x10'], /hours is 0x10; give/],
  ['an option that is none', ['--secnds', '1'], /secnds/],
  ['hours that are none', ['--hours', '0'], /hours.*0.*above 0/],
  ['a target that is none', ['--hours', '1', '--winding-target', 'cool'], /winding-target.*cool/],
  ['a study with a time', ['--study', '--seconds', '1'], /seconds.*--study/],
  ['draws without a study', ['--draws', '10'], /--draws.*--study/],
  [
    'half a draw',
    ['--study', '--draws', '0.5'],
    /--draws is 0\.5; give a whole number of jobs from 0 to 1000/,
  ],
  ['a scene where a study is wanted', ['--study'], /mould-shuttle\.json.*study/],
  ['both seconds and hours', ['--hours', '1', '--seconds', '1'], /not both/],
  [
    'a cycle too long for a time-lapse',
    ['--hours', '1', '--set', 'program=scan', '--set', 'scanSpeed=1e-5'],
    /program.*scan.*5 minutes/,
  ],
])('exits with 2 for %s, and names it', async (_, args, text) => {
  const run = await axis(shuttle, ...args);
  expect(run.status).toBe(2);
  expect(run.stderr.replace(/\s+/g, ' ')).toMatch(text);
});

it('exits with 2 for a scene file that is not there', async () => {
  const run = await axis('no-such-scene.json');
  expect(run.status).toBe(2);
  expect(run.stderr).toContain('no-such-scene.json');
});

it('reads a scene behind a byte order mark', async () => {
  writeFileSync(join(folder, 'marked.json'), `\ufeff${readFileSync(shuttle, 'utf8')}`);
  const run = await axis('marked.json', '--seconds', '0.01');
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
});

it('writes a recording line by line: what is there of one that was interrupted is whole lines', () => {
  const path = join(folder, 'part.csv');
  const csv = new CsvWriter(path, ['a', 'b']);
  for (let k = 0; k < 4500; k++) csv.add(Float64Array.of(k, 0.5));
  const [head, ...lines] = readFileSync(path, 'utf8').trimEnd().split('\n');
  expect(head).toBe('a,b');
  expect(lines.length).toBeGreaterThan(3000);
  expect(lines.at(-1)).toBe(`${lines.length - 1},0.5`);
  csv.close();
  expect(readFileSync(path, 'utf8').trimEnd().split('\n')).toHaveLength(4501);
});

it('exits with 4 where the energy does not balance, and says so', async () => {
  const holds = vi.spyOn(Audit.prototype, 'holds', 'get').mockReturnValue(false);
  const run = await axis(shuttle, '--seconds', '0.01');
  holds.mockRestore();
  expect(run.status).toBe(4);
  expect(run.stdout).toMatch(
    /energy account of this run does not balance: its figures are not to be trusted/,
  );
  expect((await axis(shuttle, '--seconds', '0.01')).status).toBe(0);
});
