import { readFileSync, rmSync, writeFileSync } from 'node:fs';
import { chdir, cwd } from 'node:process';
import { describe, expect, it, vi } from 'vitest';
import { main } from '../../../../workers/entry/commandLine.ts';
import { mergeResults } from '../../../../workers/entry/tolerance/toleranceCommand.ts';
import { file, folder, lines, merged, RUNS, STUDY, shard, withStudy } from './shardFolder.ts';

withStudy();

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

describe('is refused, with what to do', () => {
  it.each([
    [
      'a range beyond the study',
      ['study.json', '--runs', '1..5001', '--out', 'x.jsonl'],
      /--runs is 1\.\.5001; give .* within 1\.\.5000/,
    ],
    ['a range backwards', ['study.json', '--runs', '9..3', '--out', 'x.jsonl'], /--runs is 9\.\.3/],
    ['no file for the results', ['study.json', '--runs', '1..3'], /Name the file for the results with --out/],
    [
      'a file of something else',
      ['study.json', '--runs', '1..3', '--out', 'study.json'],
      /study\.json holds something other.*--out/,
    ],
    [
      'the results of another study',
      ['other.json', '--runs', '1..3', '--out', 'whole.jsonl'],
      /whole\.jsonl holds something other/,
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
      /machine \d+ differs from its result in another file/,
    );
  });
});
