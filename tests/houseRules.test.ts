import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesUnder, ROOT } from './tools/sources.mjs';

/** What would make a run depend on the clock, on chance or on a browser. */
const IMPURE =
  /\bnew Date\b|(?<![\w.])Date\.|\bMath\.random\b|\bglobalThis\b|(?<![\w.])(?:performance|document|window)\.|(?<![\w.])(?:setTimeout|setInterval|queueMicrotask|fetch)\(/g;

const MACHINE_PATH = /(?<![\w.])\/(?:work|root|home|tmp|Users)\/\w/;

const text = (file: string) => readFileSync(join(ROOT, file), 'utf8');
const code = (source: string) =>
  source.replace(/(?<=^|\s)\/\*[\s\S]*?\*\//g, '').replace(/(?<=^|\s)\/\/.*$/gm, '');
const sourceFiles = (...folders: string[]) =>
  filesUnder(...folders).filter((file) => /\.(ts|css|html)$/.test(file));
const isPure = (file: string) => /^(shared|workers)\//.test(file) && !file.startsWith('workers/entry/');

it('workers are started by clients only', () => {
  const starts = (file: string) => /\bnew (?:Shared)?Worker\(/.test(code(text(file)));
  const found = sourceFiles('src', 'shared', 'scenes', 'workers').filter(starts);
  expect(found).not.toEqual([]);
  expect(found.filter((file) => !file.startsWith('src/clients/'))).toEqual([]);
});

describe('pure code', () => {
  const impure = (source: string) => code(source).match(IMPURE) ?? [];

  it('knows no clock, no chance and no browser', () => {
    const found = sourceFiles('shared', 'workers')
      .filter(isPure)
      .flatMap((file) => impure(text(file)).map((what) => `${file} uses ${what}`));
    expect(found).toEqual([]);
  });

  it.each(['const t = Date.now();', 'x += Math.random();', 'performance.now()', 'setTimeout(step, 1);'])(
    'would be caught with %s',
    (source) => expect(impure(source)).toHaveLength(1),
  );
});

describe('files', () => {
  it('hold one idea: at most 400 lines', () => {
    const lines = (file: string) => text(file).split('\n').length - 1;
    expect(sourceFiles('src', 'workers', 'shared').filter((file) => lines(file) > 400)).toEqual([]);
  });

  it('name no path of the machine they were written on', () => {
    const folders = ['src', 'workers', 'shared', 'scenes', 'tests', '.ci'];
    const topLevel = readdirSync(ROOT).filter((file) => /\.(md|json|ts)$/.test(file));
    const found = filesUnder(...folders, ...topLevel).filter(
      (file) => !file.startsWith('tests/out/') && MACHINE_PATH.test(text(file)),
    );
    expect(found).toEqual([]);
  });
});
