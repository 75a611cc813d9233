import { spawnSync } from 'node:child_process';
import { expect, it } from 'vitest';
import { ALL, ARRAY_SCRIPT, LINES, PART, scaledTo } from './documented.ts';

/** What sh makes of `script` where npm only writes down what it is called with. */
function calls(script: string, env: Record<string, string> = {}): string[] {
  const { stdout, stderr, status } = spawnSync('sh', ['-c', `npm() { echo "$@"; }\n${script}`], {
    env: { ...process.env, ...env },
    encoding: 'utf8',
  });
  expect(stderr).toBe('');
  expect(status).toBe(0);
  return stdout.trim().split('\n');
}

const partFrom = (first: number, part = PART) =>
  `run -s axis -- study.json --runs ${first}..${first + part - 1} --out part-${first}.jsonl`;
const firsts = Array.from({ length: ALL / PART }, (_, k) => k * PART + 1);

it('the documented lines run every machine of the study once', () => {
  for (const line of [LINES.parallel, LINES.xargs]) {
    const [, seq, command] = /^(seq [\d ]+) \| .*'(.*)'$/.exec(line)!;
    expect(calls(seq!).map(Number)).toEqual(firsts);
    expect(firsts.map((first) => calls(command!.replaceAll('{}', `${first}`)).join())).toEqual(
      firsts.map((first) => partFrom(first)),
    );
  }
});

it('so do the tasks of the documented job array', () => {
  const [, from, to] = /^#SBATCH --array=(\d+)-(\d+)$/m.exec(ARRAY_SCRIPT)!;
  const tasks = Array.from({ length: Number(to) - Number(from) + 1 }, (_, k) => Number(from) + k);
  expect(tasks).toHaveLength(firsts.length);
  for (const task of [tasks[0]!, tasks.at(-1)!])
    expect(calls(ARRAY_SCRIPT, { SLURM_ARRAY_TASK_ID: `${task}` })).toEqual([partFrom(task * PART + 1)]);
});

it('fewer and smaller parts for a test differ in nothing else', () => {
  expect(scaledTo(LINES.parallel, 2, 10)).toBe(
    LINES.parallel.replace('seq 1 500 9501', 'seq 1 10 11').replace('499', '9'),
  );
  expect(calls(scaledTo(ARRAY_SCRIPT, 2, 10), { SLURM_ARRAY_TASK_ID: '1' })).toEqual([partFrom(11, 10)]);
});
