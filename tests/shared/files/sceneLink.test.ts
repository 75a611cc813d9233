import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SCENE, SCENES, SHELF } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { PARAMETER_NAMES } from '../../../shared/core/parameters/table.ts';
import { problemText } from '../../../shared/core/problem.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { readLink, writeLink } from '../../../shared/files/sceneLink.ts';
import { always, anyScene, BARE_SHELF } from '../core/arbitraries.ts';

function message(fragment: string): string {
  const result = readLink(fragment, SHELF);
  if ('scene' in result) throw new Error('was read');
  return problemText(at(result.problems, 0), AS_WRITTEN);
}

/** Signs a fragment as a program of ours would, to get past the sum: FNV-1a, 32 bits. */
function signed(text: string): string {
  let hash = 2166136261n;
  for (const char of text) hash = ((hash ^ BigInt(char.charCodeAt(0))) * 16777619n) % 2n ** 32n;
  return `${text}&sum=${hash.toString(36)}`;
}

describe('a link', () => {
  test.each(SCENES)('to $id as it stands on the shelf is its id', (scene) => {
    const link = writeLink(scene, SHELF);
    expect(link).toMatch(new RegExp(`^v=2&scene=${scene.id}&sum=\\w+$`));
    expect(readLink(`#${link}`, SHELF)).toEqual({ scene });
  });

  test('to a scene of the shelf holds what differs and nothing else', () => {
    const changed: Scene = {
      ...DEFAULT_SCENE,
      preset: 'flat',
      driveType: 'flat',
      parameters: { ...DEFAULT_SCENE.parameters, payload: 6.5, filter1: 'notch', program: 'stepped sine' },
      moves: [{ to: -0.1, speed: 0.5, acceleration: 1e-3, jerk: 1e5, dwell: 0 }],
    };
    const link = writeLink(changed, SHELF);
    expect(link.slice(0, link.lastIndexOf('&'))).toBe(
      'v=2&scene=mould-shuttle&preset=flat&driveType=flat&filter1=notch&program=stepped%20sine&payload=6.5&moves=-0.1%2C0.5%2C0.001%2C100000%2C0',
    );
    expect(readLink(link, SHELF)).toEqual({ scene: changed });
  });

  test('to any other scene needs no shelf', () => {
    always(anyScene, 200, (scene) => {
      expect(readLink(writeLink(scene, SHELF), BARE_SHELF)).toEqual({ scene });
    });
  });

  test('to a shelf scene with any parameters reads back, number by number', () => {
    const ids = SCENES.map(({ id }) => id);
    const presets = [null, ...Object.keys(SHELF.presets)];
    const identity = fc.record({ id: fc.constantFrom(...ids), preset: fc.constantFrom(...presets) });
    always(fc.tuple(anyScene, identity), 200, ([own, based]) => {
      const scene = { ...own, ...based };
      expect(readLink(writeLink(scene, SHELF), SHELF)).toEqual({ scene });
    });
  });

  test('to a scene under the title of one of the shelf is not taken for that one', () => {
    const own = { ...DEFAULT_SCENE, id: null };
    expect(readLink(writeLink(own, SHELF), SHELF)).toEqual({ scene: own });
  });

  test('based on a drive that is not on the shelf has its values all the same', () => {
    const { scene } = readLink(writeLink({ ...DEFAULT_SCENE, preset: 'no longer' }, SHELF), SHELF) as {
      scene: Scene;
    };
    expect(scene).toEqual({ ...DEFAULT_SCENE, preset: null });
  });

  // RFC 3986, 3.5: what a fragment may hold unescaped.
  test('holds only characters that a fragment may', () => {
    always(anyScene, 50, (scene) => {
      expect(writeLink(scene, SHELF)).toMatch(/^([\w\-.~!$&'()*+,;=:@/?]|%[0-9A-F]{2})*$/);
    });
  });

  test('the names beside the parameters are not names of parameters', () => {
    for (const name of ['v', 'scene', 'preset', 'form', 'title', 'lookFor', 'driveType', 'moves', 'sum']) {
      expect(PARAMETER_NAMES).not.toContain(name);
    }
  });
});

describe('a damaged link gives a problem', () => {
  const whole = writeLink(
    { ...DEFAULT_SCENE, parameters: { ...DEFAULT_SCENE.parameters, payload: 6.5 } },
    SHELF,
  );

  test('wherever it is cut', () => {
    for (let length = 0; length < whole.length; length++) {
      expect(message(whole.slice(0, length))).toMatch(/damaged or incomplete/);
    }
  });

  test('whichever character is another one', () => {
    for (let at = 4; at < whole.length; at++) {
      for (const other of ['0', '%', '&', '=', 'z']) {
        if (whole[at] === other) continue;
        message(whole.slice(0, at) + other + whole.slice(at + 1));
      }
    }
  });

  test.each<[string, string, RegExp]>([
    ['empty', '', /damaged/],
    ['foreign', '#section-2', /damaged/],
    ['newer', 'v=3&anything', /version 3 and was (made|written) by a newer Waybench/],
    ['endless', `v=2&${'x'.repeat(200_000)}`, /too long/],
    ['broken escape', signed('v=2&scene=%E0%A4'), /not text/],
    ['lone percent', signed('v=2&scene=%'), /not text/],
    [
      'unknown scene',
      signed('v=2&scene=mold-shuttle'),
      /asks for the scene "mold-shuttle".*mean "mould-shuttle"/,
    ],
    ['no title', signed('v=2&driveType=flat'), /^title: it is missing/],
    [
      'unknown parameter',
      signed('v=2&scene=mould-shuttle&paylod=3'),
      /^"paylod" is not a parameter\. Did you mean "payload"/,
    ],
    ['prototype', signed('v=2&scene=mould-shuttle&__proto__=3'), /^"__proto__" is not a parameter/],
    ['outside the range', signed('v=2&scene=mould-shuttle&speed=60'), /^speed: 60 m\/s is outside/],
    ['no number', signed('v=2&scene=mould-shuttle&speed=NaN'), /^speed: "NaN" is not a number/],
    ['hexadecimal', signed('v=2&scene=mould-shuttle&speed=0x1'), /^speed: "0x1" is not a number/],
    ['empty value', signed('v=2&scene=mould-shuttle&speed='), /^speed: "" is not a number/],
    ['no switch', signed('v=2&scene=mould-shuttle&observer=yes'), /^observer: "yes" is not true or false/],
    [
      'half a move',
      signed('v=2&scene=mould-shuttle&moves=0.1%2C1'),
      /^moves\[0\]\.acceleration: it is missing/,
    ],
    [
      'move outside',
      signed('v=2&scene=mould-shuttle&moves=9%2C1%2C1%2C1%2C1'),
      /^moves\[0\]\.to: 9 m is outside/,
    ],
    ['contradiction', signed('v=2&scene=mould-shuttle&travelMax=0.1'), /outside the travel/],
  ])('%s', (_case, fragment, expected) => {
    expect(message(fragment)).toMatch(expected);
  });

  test('noise is refused and never throws', () => {
    always(fc.string({ unit: 'binary', maxLength: 60 }), 500, (noise) => {
      message(noise);
      message(signed(`v=2&scene=mould-shuttle&${encodeURI(noise)}`));
    });
    always(fc.string({ unit: 'grapheme-ascii', maxLength: 60 }), 500, (noise) => {
      message(signed(`v=2&scene=mould-shuttle&${noise}`));
    });
  });
});
