import { readdirSync, readFileSync } from 'node:fs';
import { join, posix } from 'node:path';
import { describe, expect, it } from 'vitest';
import { filesUnder, ROOT } from './tools/sources.mjs';

/**
 * Who may import what, by folder or package; the first room that fits a file counts. The model cannot reach the page,
 * the page can start workers and nothing more, and each outside package is known in one place.
 */
const ROOMS: readonly { files: RegExp; may: readonly string[]; mayNot?: readonly string[] }[] = [
  { files: /^shared\//, may: ['shared/'] },
  { files: /^scenes\//, may: ['shared/', 'scenes/'] },
  { files: /^workers\/entry\//, may: ['shared/', 'scenes/', 'workers/', 'comlink', 'node:'] },
  { files: /^workers\/solver\//, may: ['shared/', 'workers/', 'odex'], mayNot: ['workers/entry/'] },
  { files: /^workers\//, may: ['shared/', 'workers/'], mayNot: ['workers/entry/'] },
  { files: /^src\/clients\//, may: ['src/', 'shared/', 'comlink', 'address of workers/entry/'] },
  { files: /^src\//, may: ['src/', 'shared/', 'scenes/', 'three', 'lil-gui'] },
];

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

/** Everything a module pulls in, relative paths resolved to the root of the project; a mere address is marked as one. */
function importsOf(file: string, source: string): string[] {
  const specifier =
    /(\bfrom\s|\bimport\s|\bimport\(|\bimport\.meta\.glob(?:<[^(]+>)?\(|\bnew URL\()\s*(['"`])([^'"`\s]+)\2/g;
  return [...code(source).matchAll(specifier)].map(([, how, , target]) => {
    const path = target!.startsWith('.') ? posix.join(file, '..', target!) : target!;
    return how === 'new URL(' ? `address of ${path}` : path;
  });
}

function forbiddenImports(file: string, source: string): string[] {
  const room = ROOMS.find(({ files }) => files.test(file));
  const startsAny = (target: string, starts: readonly string[] = []) =>
    starts.some((start) => target.startsWith(start));
  return importsOf(file, source)
    .filter((target) => !startsAny(target, room?.may) || startsAny(target, room?.mayNot))
    .map((target) => `${file} must not import ${target}`);
}

describe('the import direction', () => {
  it.each(ROOMS)('holds in $files', ({ files }) => {
    const inRoom = sourceFiles('shared', 'scenes', 'workers', 'src').filter((file) => files.test(file));
    expect(inRoom).not.toEqual([]);
    expect(inRoom.flatMap((file) => forbiddenImports(file, text(file)))).toEqual([]);
  });

  it.each([
    ['shared/core/units.ts', "import { loop } from '../../workers/loop.ts';"],
    ['shared/core/units.ts', "export type { Loop } from '../../workers/loop.ts';"],
    ['workers/model/heat.ts', "import { Solver } from 'odex';"],
    ['workers/model/heat.ts', "const scenes = import.meta.glob('../../scenes/*.json');"],
    ['workers/model/heat.ts', "import { serve } from '../entry/axisWorker.ts';"],
    ['workers/solver/dopri.ts', "import { wrap } from 'comlink';"],
    ['src/panel/panel.ts', "const model = await import('../../workers/model/heat.ts');"],
    ['src/panel/panel.ts', "new Worker(new URL('../../workers/entry/axisWorker.ts', import.meta.url));"],
    ['src/clients/axisClient.ts', "import { step } from '../../workers/control/step.ts';"],
    ['src/clients/axisClient.ts', "import { serve } from '../../workers/entry/axisWorker.ts';"],
  ])('would catch in %s: %s', (file, source) => {
    expect(forbiddenImports(file, source)).toHaveLength(1);
  });
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
