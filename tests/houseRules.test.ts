import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
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

  it('lie in folders of at most 25', () => {
    const count = new Map<string, number>();
    for (const file of sourceFiles('src', 'workers', 'shared', 'scenes', 'tests')) {
      count.set(dirname(file), (count.get(dirname(file)) ?? 0) + 1);
    }
    expect([...count].filter(([, files]) => files > 25)).toEqual([]);
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

describe('exports', () => {
  /** Names that a file exports, `export { a, b }` and default exports left out: there are none. */
  const exported = (source: string) =>
    [
      ...code(source).matchAll(/^export (?:abstract )?(?:const|function\*?|class|interface|type) (\w+)/gm),
    ].map(([, name]) => name);
  const imported = (source: string) =>
    [...code(source).matchAll(/\bimport (?:type )?\{([^}]*)\}/g)].flatMap(([, names = '']) =>
      names.split(',').map((name) => name.replace(/^\s*(?:type )?|\s+as .*|\s+$/g, '')),
    );
  /** Files loaded whole when they are first needed: what they export is read from the module. */
  const dynamic = (source: string) =>
    [...code(source).matchAll(/\bimport\('[^']*\/([\w.]+)'\)/g)].map(([, file]) => file);

  it('are imported by another file', () => {
    const everywhere = ['src', 'workers', 'shared', 'scenes', 'tests', 'vite.config.ts'];
    const sources = filesUnder(...everywhere).filter(
      (file) => /\.(ts|mjs)$/.test(file) && !file.endsWith('.d.ts'),
    );
    const used = new Set(sources.flatMap((file) => imported(text(file))));
    const whole = new Set(sources.flatMap((file) => dynamic(text(file))));
    const dead = sources
      .filter((file) => !file.startsWith('tests/') && !whole.has(file.slice(file.lastIndexOf('/') + 1)))
      .flatMap((file) => exported(text(file)).map((name) => ({ file, name })))
      .filter(({ name }) => name !== undefined && !used.has(name));
    expect(dead).toEqual([]);
  });
});

it('every long test has a quick one beside it that can fail as well', () => {
  const long = sourceFiles('tests').filter((file) => file.endsWith('.long.test.ts'));
  expect(long).not.toEqual([]);
  expect(long.filter((file) => !existsSync(join(ROOT, file.replace('.long.', '.'))))).toEqual([]);
});
