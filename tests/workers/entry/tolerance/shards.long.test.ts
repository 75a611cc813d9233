import { spawn } from 'node:child_process';
import { existsSync } from 'node:fs';
import { join } from 'node:path';
import { env, execPath } from 'node:process';
import { expect, it, vi } from 'vitest';
import { ROOT } from '../../../tools/sources.mjs';
import { file, folder, lines, numbers, runs, shard, withStudy } from './shardFolder.ts';

withStudy();

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
