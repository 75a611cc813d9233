import { describe, expect, test } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import { readStudy, writeStudy } from '../../../shared/files/studyFile.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';
import { USUAL_RANGES } from '../../../shared/study/ranges.ts';
import { always } from '../core/arbitraries.ts';
import { anyStudy } from '../study/arbitraries.ts';

const study: Study = {
  job: { title: 'Shuttle a mould', values: defaultJobValues(), moves: [] },
  candidates: [
    { preset: 'tubular', motorCount: 2, own: { forceConstant: 62 }, gains: { Kp: 1e6 } },
    { preset: 'screw', motorCount: 1, own: {}, gains: null },
  ],
};
const entries = JSON.parse(writeStudy(study));

function message(input: unknown): string {
  const result = readStudy(input, PRESETS);
  if ('study' in result) throw new Error('was read');
  return problemText(at(result.problems, 0), AS_WRITTEN);
}

test('any study reads back, number by number', () => {
  always(anyStudy, 60, (each) => {
    expect(readStudy(writeStudy(each), PRESETS)).toEqual({ study: each });
  });
});

test('ranges that are not the usual ones are kept; one that is not stated is the usual', () => {
  const ranges = { ...USUAL_RANGES, payload: 0.2, friction: 0 };
  expect(readStudy(writeStudy({ ...study, ranges }), PRESETS)).toEqual({ study: { ...study, ranges } });
  expect(readStudy({ ...entries, ranges: { payload: 0.2 } }, PRESETS)).toEqual({
    study: { ...study, ranges: { ...USUAL_RANGES, payload: 0.2 } },
  });
  expect(writeStudy(study)).not.toContain('ranges');
});

test('the least that a file has to say', () => {
  const min = {
    waybench: 'study',
    version: 2,
    title: 'Shuttle a mould',
    candidates: [{ preset: 'tubular' }],
  };
  expect(readStudy(min, PRESETS)).toEqual({
    study: { ...study, candidates: [{ preset: 'tubular', motorCount: 1, own: {}, gains: null }] },
  });
});

const withCandidate = (candidate: object) => ({
  ...entries,
  candidates: [entries.candidates[1], { ...entries.candidates[0], ...candidate }],
});

describe('a file that is refused', () => {
  test.each<[string, unknown, RegExp]>([
    ['no JSON', 'study', /^The file is not valid JSON/],
    ['nothing', null, /^A study file must contain an object, not nothing/],
    ['a scene', { waybench: 'scene', version: 2 }, /^This is not a study file/],
    ['a newer one', { ...entries, version: 3 }, /version 3 and was written by a newer Waybench/],
    [
      'a range of nothing known',
      { ...entries, ranges: { load: 0.1 } },
      /^"load" is not an input with a range/,
    ],
    ['a range too wide', { ...entries, ranges: { payload: 2 } }, /^Payload: 2 is outside 0 to 0.5/],
    [
      'a stray entry',
      { ...entries, candidate: [] },
      /^"candidate" is not an entry of a study file\. Did you mean "candidates"/,
    ],
    [
      'a bad job',
      { ...entries, values: { payload: -1 } },
      /^payload: −1 kg is outside 0, or 0\.01 kg to 2000 kg/,
    ],
    ['no candidates', { ...entries, candidates: undefined }, /^candidates: it is missing/],
    [
      'an empty list of candidates',
      { ...entries, candidates: [] },
      /^candidates: there are 0\. Give one to 4/,
    ],
    [
      'five candidates',
      { ...entries, candidates: Array(5).fill({ preset: 'tubular' }) },
      /^candidates: there are 5/,
    ],
    [
      'a candidate that is none',
      { ...entries, candidates: ['tubular'] },
      /^Candidate A: "tubular" is not a drive/,
    ],
    [
      'a stray part of a candidate',
      withCandidate({ motors: 2 }),
      /^Candidate B: "motors" is not a part of a candidate/,
    ],
    [
      'an unknown preset',
      withCandidate({ preset: 'tubula' }),
      /^Candidate B: preset: "tubula" is not one of .* Did you mean "tubular"/,
    ],
    [
      'a prototype as preset',
      withCandidate({ preset: '__proto__' }),
      /^Candidate B: preset: "__proto__" is not one of/,
    ],
    [
      'half a motor',
      withCandidate({ motorCount: 1.5 }),
      /^Candidate B: motorCount: 1\.5 is not a whole number/,
    ],
    ['five motors', withCandidate({ motorCount: 5 }), /^Candidate B: motorCount: 5 is outside 1 to 4/],
    [
      'two motors on a screw',
      withCandidate({ preset: 'screw', own: {}, motorCount: 2 }),
      /^Candidate B: motorCount: 2 motors cannot share a screw\. Enter 1/,
    ],
    [
      'what is not of a datasheet',
      withCandidate({ own: { payload: 3 } }),
      /^Candidate B: "payload" is not an entry of a datasheet/,
    ],
    [
      'a datasheet value beyond its range',
      withCandidate({ own: { resistance: 1e4 } }),
      /^Candidate B: resistance: 10000 Ω is outside/,
    ],
    [
      'a limit below where current falls',
      withCandidate({ own: { windingLimit: 90 } }),
      /^Candidate B: foldbackTemperature \(110 °C\) must be less than windingLimit \(90 °C\)/,
    ],
    [
      'four motors beyond the table',
      withCandidate({ motorCount: 4, own: { peakCurrent: 900 } }),
      /^Candidate B: peakCurrent: 3600 A peak is outside/,
    ],
    [
      'gains that are none',
      withCandidate({ gains: { payload: 3 } }),
      /^Candidate B: "payload" is not a gain/,
    ],
    ['a gain beyond its range', withCandidate({ gains: { Kp: -1 } }), /^Candidate B: Kp: −1 N\/m is outside/],
  ])('%s', (_case, input, expected) => {
    expect(message(input)).toMatch(expected);
  });
});
