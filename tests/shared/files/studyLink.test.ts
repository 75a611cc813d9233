import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SCENE, PRESETS, SHELF } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { readLink, writeLink } from '../../../shared/files/sceneLink.ts';
import { readStudyLink, writeStudyLink } from '../../../shared/files/studyLink.ts';
import { isStudyLink } from '../../../shared/files/studyLinkKey.ts';
import { JOB_ENTRIES } from '../../../shared/study/job.ts';
import { always } from '../core/arbitraries.ts';
import { anyStudy } from '../study/arbitraries.ts';

const [study] = fc.sample(anyStudy, { numRuns: 1, seed: 4 });
const whole = study ? writeStudyLink(study) : '';

function message(fragment: string): string {
  const result = readStudyLink(fragment, PRESETS);
  if ('study' in result) throw new Error('was read');
  return problemText(at(result.problems, 0), AS_WRITTEN);
}

/** Signs a fragment as a program of ours would, to get past the sum: FNV-1a, 32 bits. */
function signed(text: string): string {
  let hash = 2166136261n;
  for (const char of text) hash = ((hash ^ BigInt(char.charCodeAt(0))) * 16777619n) % 2n ** 32n;
  return `${text}&sum=${hash.toString(36)}`;
}

test('any study reads back from its link, number by number', () => {
  always(anyStudy, 60, (study) => {
    expect(readStudyLink(`#${writeStudyLink(study)}`, PRESETS)).toEqual({ study });
  });
});

// RFC 3986, 3.5: what a fragment may hold unescaped.
test('holds only characters that a fragment may', () => {
  always(anyStudy, 30, (study) => {
    expect(writeStudyLink(study)).toMatch(/^([\w\-.~!$&'()*+,;=:@/?]|%[0-9A-F]{2})*$/);
  });
});

test('a link to a study is told from one to a scene, and neither is read as the other', () => {
  const scene = writeLink(DEFAULT_SCENE, SHELF);
  expect(isStudyLink(`#${whole}`)).toBe(true);
  expect(isStudyLink(`#${scene}`)).toBe(false);
  expect(message(scene)).toMatch(/damaged/);
  expect(readLink(whole, SHELF)).toHaveProperty('problems');
});

test('the names beside the values of a job are not names of values', () => {
  for (const name of ['study', 'title', 'moves', 'sum', 'A', 'B', 'C', 'D'])
    expect(JOB_ENTRIES).not.toContain(name);
});

describe('a damaged link gives a problem', () => {
  test('wherever it is cut', () => {
    for (let length = 0; length < whole.length; length++) {
      expect(message(whole.slice(0, length))).toMatch(/damaged or incomplete/);
    }
  });

  test('whichever character is another one', () => {
    for (let at = 8; at < whole.length; at++) {
      for (const other of ['0', '%', '&', '=', 'z']) {
        if (whole[at] !== other) message(whole.slice(0, at) + other + whole.slice(at + 1));
      }
    }
  });

  test.each<[string, string, RegExp]>([
    ['newer', 'study=2&anything', /version 2 and was (made|written) by a newer Waybench/],
    ['no title', signed('study=1&A=tubular,1'), /^title: it is missing/],
    ['no candidates', signed('study=1&title=x'), /^candidates: there are 0/],
    [
      'unknown value',
      signed('study=1&title=x&paylod=3&A=tubular,1'),
      /^"paylod" is not an entry of a job\. Did you mean "payload"/,
    ],
    ['prototype', signed('study=1&title=x&__proto__=3&A=tubular,1'), /^"__proto__" is not an entry/],
    [
      'prototype of a candidate',
      signed('study=1&title=x&A=tubular,1&A.__proto__.x=3'),
      /^Candidate A: "__proto__" is not a part/,
    ],
    ['hexadecimal', signed('study=1&title=x&payload=0x5&A=tubular,1'), /^payload: "0x5" is not a number/],
    ['no count', signed('study=1&title=x&A=tubular'), /^Candidate A: motorCount: "" is not a number/],
    ['no preset', signed('study=1&title=x&A.own.Kp=3'), /^Candidate A: preset: it is missing/],
    ['half a move', signed('study=1&title=x&moves=0.1&A=tubular,1'), /^moves\[0\]\.speed: it is missing/],
  ])('%s', (_case, fragment, expected) => {
    expect(message(fragment)).toMatch(expected);
  });

  test('noise is refused and never throws', () => {
    always(fc.string({ unit: 'binary', maxLength: 60 }), 300, (noise) => {
      message(noise);
      message(signed(`study=1&title=x&A=tubular,1&${encodeURI(noise)}`));
    });
    always(fc.string({ unit: 'grapheme-ascii', maxLength: 60 }), 300, (noise) => {
      message(signed(`study=1&title=x&A=tubular,1&${noise}`));
    });
  });
});
