import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SCENE, PRESETS, SCENES, SHELF } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import { defaultParameters } from '../../../shared/core/parameters/table.ts';
import { problemText, problemTexts } from '../../../shared/core/problem.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { readScene, writeScene } from '../../../shared/files/sceneFile.ts';
import { always, anyScene, BARE_SHELF } from '../core/arbitraries.ts';

const file = (entries: Record<string, unknown> = {}) => ({
  waybench: 'scene',
  version: 3,
  title: 'Test bench',
  driveType: 'tubular',
  ...entries,
});

function read(input: unknown): Scene {
  const result = readScene(input, SHELF);
  if ('problems' in result) throw new Error(problemTexts(result.problems, AS_WRITTEN).join('\n'));
  return result.scene;
}

function refused(input: unknown): readonly { field: string; message: string }[] {
  const result = readScene(input, SHELF);
  if ('scene' in result) throw new Error('was read');
  expect(result.problems.length).toBeGreaterThan(0);
  expect(result.problems.length).toBeLessThan(30);
  const told = result.problems.map((each) => ({ field: each.field, message: problemText(each, AS_WRITTEN) }));
  for (const { message } of told) expect(message.length).toBeLessThan(600);
  return told;
}

describe('a scene file', () => {
  test('with a title and a drive type is the defaults', () => {
    expect(read(file())).toEqual({
      id: null,
      preset: null,
      title: 'Test bench',
      lookFor: '',
      driveType: 'tubular',
      parameters: defaultParameters(),
      moves: [],
    });
  });

  test('resolves defaults, then the preset, then its own parameters', () => {
    const scene = read(
      file({ driveType: undefined, preset: 'flat', parameters: { polePitch: 0.02, payload: 7 } }),
    );
    expect(scene).toMatchObject({ driveType: 'flat', preset: 'flat' });
    expect(scene.parameters.polePitch).toBe(0.02);
    expect(scene.parameters.payload).toBe(7);
    expect(scene.parameters.attraction).toBe(PRESETS.flat!.parameters.attraction);
    expect(scene.parameters.ambient).toBe(defaultParameters().ambient);
  });

  test('takes a preset as often as there are motors', () => {
    const two = read(file({ preset: 'tubular', parameters: { motorCount: 2, peakCurrent: 30 } })).parameters;
    const preset = PRESETS.tubular!.parameters;
    expect(two.windingCapacity).toBe(2 * preset.windingCapacity!);
    expect(two.carrierToAir).toBe(2 * preset.carrierToAir!);
    expect(two.linkStiffness).toBe(2 * preset.linkStiffness!);
    expect(two.forceConstant).toBe(preset.forceConstant);
    expect(two.peakCurrent).toBe(30);
  });

  test('is the same as text and parsed', () => {
    const entries = file({ parameters: { payload: 3 } });
    expect(read(JSON.stringify(entries))).toEqual(read(entries));
  });

  test.each(SCENES)('$id is written whole and reads back, with what it is based on', (scene) => {
    expect(readScene(writeScene(scene), SHELF)).toEqual({ scene });
  });

  test.each(SCENES)('$id keeps every value where nothing of the shelf is known', (scene) => {
    const own = { ...scene, id: null, preset: null };
    expect(readScene(writeScene(scene), BARE_SHELF)).toEqual({ scene: own });
  });

  test('says what it is based on without taking a value from there', () => {
    const scene = read(file({ id: 'soft-base', basedOn: 'flat', parameters: { payload: 7 } }));
    expect(scene).toMatchObject({
      id: 'soft-base',
      preset: 'flat',
      title: 'Test bench',
      driveType: 'tubular',
    });
    expect(scene.parameters).toEqual({ ...defaultParameters(), payload: 7 });
  });

  test.each(['mould shuttle', 'constructor', '', 5, null, ['mould-shuttle']])(
    'based on %j, which is not on the shelf, is a scene of its own',
    (id) => {
      expect(read(file({ id, basedOn: id }))).toMatchObject({ id: null, preset: null });
    },
  );

  test('any legal scene reads back, number by number', () => {
    always(anyScene, 200, (scene) => {
      expect(readScene(writeScene(scene), BARE_SHELF)).toEqual({ scene });
    });
  });
});

describe('a bad scene file is refused in plain words', () => {
  test.each<[string, unknown, RegExp]>([
    ['nothing', undefined, /must contain an object, not nothing/],
    ['a number', 5, /must contain an object, not 5/],
    ['a list', [], /must contain an object, not a list/],
    ['no JSON', '{ "waybench": ', /not valid JSON/],
    ['empty text', '', /not valid JSON/],
    [
      'NaN as JSON',
      '{"waybench":"scene","version":3,"title":"x","parameters":{"payload":NaN}}',
      /not valid JSON/,
    ],
    ['another file', { name: 'package' }, /^This is not a scene file: .* is nothing and should be "scene"/],
    ['a session', { waybench: 'session' }, /^This is not a scene file: .* is "session"/],
    ['no version', file({ version: undefined }), /^version: it is missing\. Versions 1 to 3/],
    ['version as text', file({ version: '2' }), /^version: "2" is not a version number/],
    ['half a version', file({ version: 1.5 }), /^version: 1\.5 is not a version number/],
    ['version 0', file({ version: 0 }), /^version: 0 is not a version number/],
    [
      'a newer version',
      file({ version: 4 }),
      /version 4 and was written by a newer Waybench\. This one reads versions up to 3\. Update/,
    ],
    [
      'stray entry',
      file({ parmeters: {} }),
      /^"parmeters" is not an entry of a scene file\. Did you mean "parameters"\?/,
    ],
    ['no title', file({ title: undefined }), /^title: it is missing/],
    ['blank title', file({ title: '  ' }), /^title: it is empty/],
    ['number as title', file({ title: 7 }), /^title: 7 is not text/],
    [
      'endless title',
      file({ title: 'x'.repeat(1e6) }),
      /^title: it has 1000000 characters\. Enter at most 120/,
    ],
    ['two lines', file({ lookFor: 'a\nb' }), /^lookFor: .* control characters/],
    ['half a character', file({ title: 'a\ud800b' }), /^title: .* control characters/],
    [
      'unknown drive type',
      file({ driveType: 'round' }),
      /^driveType: "round" is not one of tubular, u-channel, flat, screw/,
    ],
    ['no drive type', file({ driveType: undefined }), /^driveType: it is missing/],
    [
      'unknown preset',
      file({ preset: 'tubula' }),
      /^preset: "tubula" is not one of .*Did you mean "tubular"\?/,
    ],
    ['inherited preset', file({ preset: 'constructor' }), /^preset: "constructor" is not one of/],
    ['preset as object', file({ preset: {} }), /^preset: an object is not one of/],
    ['parameters as list', file({ parameters: [] }), /^Parameters must be an object/],
    ['null parameters', file({ parameters: null }), /^Parameters must be an object/],
    ['NaN as text', file({ parameters: { payload: 'NaN' } }), /^payload: "NaN" is not a number/],
    [
      'number beyond doubles',
      JSON.stringify(file()).replace('}', ',"parameters":{"payload":1e999}}'),
      /^payload: That number is too large/,
    ],
    ['moves as object', file({ moves: {} }), /^moves: an object is not a list/],
    ['null moves', file({ moves: null }), /^moves: it is missing/],
    ['move as number', file({ moves: [1] }), /^moves\[0\]: 1 is not a move of to, speed/],
    ['too many moves', file({ moves: new Array(1001).fill({}) }), /^moves: 1001 lines are too many/],
  ])('%s', (_case, input, message) => {
    expect(at(refused(input), 0).message).toMatch(message);
  });

  const move = { to: 0.1, speed: 1, acceleration: 10, jerk: 500, dwell: 0.1 };
  test.each<[string, object, RegExp]>([
    ['missing entry', { ...move, dwell: undefined }, /^moves\[1\]\.dwell: it is missing/],
    ['stray entry', { ...move, spede: 1 }, /^"spede" is not an entry of moves\[1\]\. Did you mean "speed"\?/],
    ['speed 0', { ...move, speed: 0 }, /^moves\[1\]\.speed: 0 m\/s is outside 1·10⁻⁵ m\/s to 6 m\/s/],
    [
      'outside the travel',
      { ...move, to: 0.4 },
      /^moves\[1\]\.to: 0\.4 m is outside the travel, −0\.3 m to 0\.3 m/,
    ],
  ])('move with %s', (_case, bad, message) => {
    expect(at(refused(file({ moves: [move, bad] })), 0).message).toMatch(message);
  });

  test('all that is wrong is said at once, each with its field', () => {
    const problems = refused(
      file({ title: '', driveType: 'x', parameters: { speed: -1, strok: 1 }, moves: 3 }),
    );
    expect(problems.map(({ field }) => field)).toEqual(['title', 'driveType', 'speed', 'strok', 'moves']);
  });
});

test('a contradiction that the preset brings along is refused too', () => {
  const crooked = { ...PRESETS.flat!, parameters: { peakCurrent: 5, continuousCurrent: 6 } };
  const result = readScene(file({ preset: 'crooked' }), { presets: { crooked }, scenes: [] });
  expect(result).toMatchObject({ problems: [{ field: 'continuousCurrent', value: 6 }] });
});

describe('a hostile file', () => {
  test('cannot reach a prototype', () => {
    const text = `{"waybench":"scene","version":3,"title":"x","driveType":"flat",
      "parameters":{"__proto__":{"payload":99},"constructor":{"prototype":{"payload":99}}}}`;
    expect(refused(text).map(({ field }) => field)).toEqual(['__proto__', 'constructor']);
    refused('{"__proto__":{"waybench":"scene","version":3,"title":"x","driveType":"flat"}}');
    refused(`{"waybench":"scene","version":3,"title":"x","driveType":"flat","__proto__":{"preset":"flat"}}`);
    refused(`{"waybench":"scene","version":1,"title":"x","driveType":"flat","parameters":{"__proto__":1}}`);
    expect(({} as { payload?: number }).payload).toBeUndefined();
  });

  test('of 10 MB is refused unread', () => {
    expect(at(refused(`"${'x'.repeat(1e7)}"`), 0).message).toMatch(/too large/);
  });

  test('nested 200000 deep is refused', () => {
    const deep = '['.repeat(200_000) + ']'.repeat(200_000);
    refused(deep);
    refused(
      `{"waybench":"scene","version":3,"title":"x","driveType":"flat","parameters":{"payload":${deep}}}`,
    );
    refused(`{"waybench":"scene","version":3,"title":"x","driveType":"flat","moves":${deep}}`);
  });

  test('broken at random is read whole or refused, never half', () => {
    const text = writeScene(DEFAULT_SCENE);
    const damage = fc.record({
      at: fc.nat(text.length - 1),
      by: fc.string({ unit: 'binary-ascii', maxLength: 2 }),
      drops: fc.nat(3),
    });
    always(damage, 500, ({ at, by, drops }) => {
      const result = readScene(text.slice(0, at) + by + text.slice(at + drops), SHELF);
      if ('scene' in result) expect(crossChecks(result.scene.parameters)).toEqual([]);
      else for (const each of result.problems) expect(problemText(each, AS_WRITTEN)).toBeTruthy();
    });
  });
});

describe('a file of version 1', () => {
  const first = (parameters: unknown) => file({ version: 1, parameters });

  test('has its lengths in the units their names say', () => {
    const { parameters } = read(
      first({
        strokeMm: 150,
        startMm: -75,
        speedMmS: 800,
        scanSpeedMmS: 2,
        dwellMs: 250,
        stairStepNm: 5,
        polePitchMm: 24,
        backlashUm: 3,
        travelMinMm: -200,
        travelMaxMm: 200,
        followingErrorLimitMm: 1.5,
        windowUm: 0.5,
        acceleration: 8,
        program: 'scan',
      }),
    );
    const expected = {
      stroke: 0.15,
      start: -0.075,
      speed: 0.8,
      scanSpeed: 0.002,
      dwell: 0.25,
      stairStep: 5e-9,
      polePitch: 0.024,
      backlash: 3e-6,
      travelMin: -0.2,
      travelMax: 0.2,
      followingErrorLimit: 0.0015,
      window: 5e-7,
      acceleration: 8,
    };
    for (const [name, value] of Object.entries(expected)) {
      expect(parameters[name as keyof typeof expected] / value).toBeCloseTo(1, 12);
    }
    expect(parameters.program).toBe('scan');
  });

  test('is written as version 3', () => {
    const scene = read(first({ leadMm: 20, speedMmS: 500 }));
    expect(JSON.parse(writeScene(scene))).toMatchObject({
      version: 3,
      parameters: { lead: 0.02, speed: 0.5 },
    });
  });

  test.each<[string, object, RegExp]>([
    ['beyond the range', { strokeMm: 5000 }, /^stroke: 5 m is outside −2 m to 2 m/],
    ['as text', { strokeMm: '150' }, /^stroke: "150" is not a number/],
    [
      'under both names',
      { strokeMm: 150, stroke: 0.15 },
      /^"strokeMm" is not a parameter\. Did you mean "stroke"\?/,
    ],
  ])('with a stroke %s is refused', (_case, parameters, message) => {
    expect(at(refused(first(parameters)), 0).message).toMatch(message);
  });

  test('names of version 1 mean nothing in version 2', () => {
    expect(at(refused(file({ parameters: { strokeMm: 150 } })), 0).message).toMatch(
      /^"strokeMm" is not a parameter/,
    );
  });
});
