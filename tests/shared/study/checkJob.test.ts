import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { checkParameters } from '../../../shared/core/check.ts';
import { defaultParameters, PARAMETERS } from '../../../shared/core/parameters/table.ts';
import { problemText } from '../../../shared/core/problem.ts';
import { onPage } from '../../../shared/core/sentence.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import { moveLimits } from '../../../shared/motion/moveLimits.ts';
import { checkMoves } from '../../../shared/motion/moves.ts';
import { moveTimeRange } from '../../../shared/motion/moveTimes.ts';
import { candidateScene } from '../../../shared/study/candidateScene.ts';
import { checkJob } from '../../../shared/study/checkJob.ts';
import { defaultJobValues, type Job, type JobValues } from '../../../shared/study/job.ts';
import { always } from '../core/arbitraries.ts';
import { anyJob } from './arbitraries.ts';

const job: Job = { title: 'Shuttle a mould', values: defaultJobValues(), moves: [] };
const withValues = (changes: Partial<JobValues>): Job => ({ ...job, values: { ...job.values, ...changes } });

function message(input: unknown, system: UnitSystem = 'metric'): string {
  const { job: read, problems } = checkJob(input);
  expect(read).toBeNull();
  return problemText(at(problems, 0), onPage(system));
}

test('the default job is legal', () => {
  expect(checkJob(job)).toEqual({ job, problems: [] });
});

test('what is not stated is the default', () => {
  expect(checkJob({ title: job.title }).job).toEqual(job);
});

test('every axis that a legal job makes of every preset is legal', () => {
  const drive = fc.record({
    preset: fc.constantFrom(...Object.keys(PRESETS)),
    motorCount: fc.constantFrom(1, 4),
    own: fc.constant({}),
    gains: fc.constant(null),
  });
  const motions = new Set<string>();
  always(fc.tuple(anyJob, drive), 1500, ([each, choice]) => {
    const { parameters, moves } = candidateScene(each, choice, PRESETS);
    expect(checkParameters(parameters, defaultParameters()).problems).toEqual([]);
    expect(checkMoves(moves, parameters)).toHaveProperty('moves');
    motions.add(each.values.motion);
  });
  expect([...motions].sort()).toEqual(['back and forth', 'move list']);
});

test('the range of move times is where the limits of the table begin and end', () => {
  for (const distance of [1e-4, 0.01, 0.25, 2]) {
    const { min, max } = moveTimeRange(distance);
    const share = (time: number, end: 'min' | 'max') => {
      const limits = moveLimits(distance, time);
      return (['speed', 'acceleration', 'jerk'] as const).map((name) => limits[name] / PARAMETERS[name][end]);
    };
    expect(Math.max(...share(min, 'max'))).toBeCloseTo(1, 12);
    expect(Math.min(...share(max, 'min'))).toBeCloseTo(1, 12);
  }
});

const line = { to: 0.1, ...moveLimits(0.2, 0.4), dwell: 0.1 };
const there = { ...line, to: -0.1 };

// Of 250 mm in 400 ms, by the one-third trapezoid: a = 6 s/t² = 9.375 m/s², j = 72 s/t³ = 281 m/s³. So 2 m/s are reached in
// v/a + a/j = 0.2467 s at half that speed on average, and left in the same: 493 mm. Shortest time: j at 1e5 m/s³ and a at 200 m/s²,
// √(6 s/a) = 86.6 ms; longest: j at 0.01 m/s³, ∛(72 s/j) = 12.16 s.
describe('a job that is refused', () => {
  test.each<[string, unknown, RegExp]>([
    ['nothing', null, /^The job must be an object, not nothing/],
    ['a list', [], /^The job must be an object, not a list/],
    ['a stray part', { ...job, value: {} }, /^"value" is not a part of a job\. Did you mean "values"/],
    ['no title', { values: {} }, /^Title: it is missing/],
    ['an empty title', { ...job, title: ' ' }, /^Title: it is empty/],
    ['values that are none', { ...job, values: 3 }, /^The values of the job must be an object, not 3/],
    [
      'an unknown value',
      withValues({ strok: 1 } as never),
      /^"strok" is not an entry of a job\. Did you mean "stroke"/,
    ],
    ['a prototype', JSON.parse('{"title":"x","values":{"__proto__":{}}}'), /^"__proto__" is not an entry/],
    ['text for a number', withValues({ payload: '5' as never }), /^Payload: "5" is not a number/],
    ['NaN', withValues({ payload: Number.NaN }), /^Payload: That is no number/],
    [
      'a value beyond its range',
      withValues({ stroke: 5 }),
      /^Stroke: 5000 mm is outside 0\.1 mm to 2000 mm\. Enter at most 2000 mm/,
    ],
    ['half a day', withValues({ days: 2.5 }), /^Days per year: 2\.5 is not a whole number/],
    [
      'no such motion',
      withValues({ motion: 'round' as never }),
      /^Motion: "round" is not one of back and forth, move list/,
    ],
    [
      'a stroke beyond the travel',
      withValues({ stroke: 0.5 }),
      /^Stroke: 500 mm is longer than the travel of the machine, 400 mm\. Shorten it or widen/,
    ],
    [
      'a move too quick',
      withValues({ moveTime: 0.02 }),
      /^Move time: 20 ms is too short for a move over 250 mm\. Enter at least 86\.7 ms/,
    ],
    [
      'a move too slow',
      withValues({ moveTime: 60 }),
      /^Move time: 60000 ms is too long for a move over 250 mm\. Enter at most 12100 ms/,
    ],
    [
      'a scan longer than the travel',
      withValues({ scanLength: 0.5, rippleLimit: 0.001 }),
      /^Scan length: 500 mm and .* longer than the travel, 400 mm/,
    ],
    [
      'a scan without room to reach its speed',
      withValues({ scanSpeed: 2, rippleLimit: 0.001 }),
      /^Scan length: 200 mm and 493 mm to reach 2000 mm\/s/,
    ],
    [
      'pulses that run into each other',
      withValues({ process: 'pulse', processTime: 0.1, processFrequency: 20 }),
      /^Length of a pulse: 100 ms is longer than the interval between pulses, 50 ms/,
    ],
    [
      'more than a counterbalance can carry',
      withValues({ payload: 2000, inclination: Math.PI / 2, counterbalanced: 1 }),
      /^Counterbalanced: it would have to carry 22100 N/,
    ],
    [
      'a list without moves',
      withValues({ motion: 'move list' }),
      /^Motion: a move list needs at least two different positions/,
    ],
    [
      'a list that goes nowhere',
      { ...withValues({ motion: 'move list' }), moves: [line, line] },
      /^Motion: a move list needs at least two/,
    ],
    [
      'a move beyond the travel',
      { ...withValues({ motion: 'move list' }), moves: [{ ...line, to: 0.3 }, there] },
      /^moves\[0\]\.to: 300 mm is outside the travel, −200 mm to 200 mm/,
    ],
    ['moves that are none', { ...job, moves: 7 }, /^moves: 7 is not a list/],
  ])('%s', (_case, input, expected) => {
    expect(message(input)).toMatch(expected);
  });

  // 25.4 mm to the inch, 0.45359237 kg to the pound: NIST SP 811, 2008, app. B.
  test('is told why in the units of its form', () => {
    expect(message(withValues({ travel: 0.127, stroke: 0.254 }), 'inch')).toMatch(
      /^Stroke: 10 in is longer than the travel of the machine, 5 in/,
    );
    expect(message(withValues({ payload: 45359.237 }), 'inch')).toMatch(/^Payload: 100000 lb is outside/);
  });
});

test('what is folded away is not in the way', () => {
  const list = { ...withValues({ motion: 'move list', stroke: 1, moveTime: 0.01 }), moves: [line, there] };
  expect(checkJob(list).problems).toEqual([]);
  expect(
    candidateScene(list, { preset: 'tubular', motorCount: 1, own: {}, gains: null }, PRESETS).parameters
      .start,
  ).toBe(-0.1);
});
