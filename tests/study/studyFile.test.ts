import { describe, expect, test } from 'vitest';
import { KITS } from '../../scenes/index.ts';
import { defaultJobValues } from '../../shared/study/job.ts';
import type { Study } from '../../shared/study/lane.ts';
import { readStudy, writeStudy } from '../../shared/study/studyFile.ts';
import { seeded } from '../shared/legalScene.ts';
import { randomStudy } from './randomStudy.ts';

const study: Study = {
  job: { title: 'Shuttle a mould', values: defaultJobValues(), moves: [] },
  lanes: [
    { kit: 'tubular', motorCount: 2, own: { forceConstant: 62 }, gains: { Kp: 1e6 } },
    { kit: 'screw', motorCount: 1, own: {}, gains: null },
  ],
};
const entries = JSON.parse(writeStudy(study));

function message(input: unknown): string {
  const result = readStudy(input, KITS);
  if ('study' in result) throw new Error('was read');
  return result.problems[0]!.message;
}

test('any study reads back, number by number', () => {
  const random = seeded(23);
  for (let i = 0; i < 60; i++) {
    const each = randomStudy(random);
    expect(readStudy(writeStudy(each), KITS)).toEqual({ study: each });
  }
});

test('the least that a file has to say', () => {
  const least = { waybench: 'study', version: 1, title: 'Shuttle a mould', lanes: [{ kit: 'tubular' }] };
  expect(readStudy(least, KITS)).toEqual({
    study: { ...study, lanes: [{ kit: 'tubular', motorCount: 1, own: {}, gains: null }] },
  });
});

const withLane = (lane: object) => ({
  ...entries,
  lanes: [entries.lanes[1], { ...entries.lanes[0], ...lane }],
});

describe('a file that is refused', () => {
  test.each<[string, unknown, RegExp]>([
    ['no JSON', 'study', /^The file is not valid JSON/],
    ['nothing', null, /^A study file holds an object, not nothing/],
    ['a scene', { waybench: 'scene', version: 2 }, /^This is not a study file/],
    ['a newer one', { ...entries, version: 2 }, /version 2, made by a newer Waybench/],
    [
      'a stray entry',
      { ...entries, lane: [] },
      /^"lane" is not an entry of a study file\. Did you mean "lanes"/,
    ],
    [
      'a bad job',
      { ...entries, values: { payload: -1 } },
      /^Payload: −1 kg is outside 0, or 0\.01 kg to 2000 kg/,
    ],
    ['no lanes', { ...entries, lanes: undefined }, /^lanes: nothing is not a list/],
    ['an empty list of lanes', { ...entries, lanes: [] }, /^lanes: there are 0\. Give one to 4/],
    ['five lanes', { ...entries, lanes: Array(5).fill({ kit: 'tubular' }) }, /^lanes: there are 5/],
    ['a lane that is none', { ...entries, lanes: ['tubular'] }, /^Lane A: "tubular" is not a drive/],
    ['a stray part of a lane', withLane({ motors: 2 }), /^Lane B: "motors" is not a part of a lane/],
    [
      'an unknown kit',
      withLane({ kit: 'tubula' }),
      /^Lane B: kit: "tubula" is not one of .* Did you mean "tubular"/,
    ],
    ['a prototype as kit', withLane({ kit: '__proto__' }), /^Lane B: kit: "__proto__" is not one of/],
    ['half a motor', withLane({ motorCount: 1.5 }), /^Lane B: motorCount: 1\.5 is not a whole number/],
    ['five motors', withLane({ motorCount: 5 }), /^Lane B: motorCount: 5 is outside 1 to 4/],
    [
      'two motors on a screw',
      withLane({ kit: 'screw', own: {}, motorCount: 2 }),
      /^Lane B: motorCount: 2 motors do not share a screw\. Give 1/,
    ],
    [
      'what is not of a datasheet',
      withLane({ own: { payload: 3 } }),
      /^Lane B: "payload" is not an entry of a datasheet/,
    ],
    [
      'a datasheet value beyond its range',
      withLane({ own: { resistance: 1e4 } }),
      /^Lane B: resistance: 10000 Ω is outside/,
    ],
    [
      'a limit below where current falls',
      withLane({ own: { windingLimit: 90 } }),
      /^Lane B: foldbackTemperature \(110 °C\) must be less than windingLimit \(90 °C\)/,
    ],
    [
      'four motors beyond the table',
      withLane({ motorCount: 4, own: { peakCurrent: 900 } }),
      /^Lane B: peakCurrent: 3600 A is outside/,
    ],
    ['gains that are none', withLane({ gains: { payload: 3 } }), /^Lane B: "payload" is not a gain/],
    ['a gain beyond its range', withLane({ gains: { Kp: -1 } }), /^Lane B: Kp: −1 N\/m is outside/],
  ])('%s', (_case, input, expected) => {
    expect(message(input)).toMatch(expected);
  });
});
