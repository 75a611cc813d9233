import { describe, expect, test } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { checkParameters, checkValue } from '../../../shared/core/check.ts';
import { crossChecks } from '../../../shared/core/crossChecks.ts';
import {
  defaultParameters,
  PARAMETER_NAMES,
  PARAMETERS,
  type Parameters,
  parameterRow,
} from '../../../shared/core/parameters/table.ts';
import { type Problem, problemText } from '../../../shared/core/problem.ts';
import { onPage, sentenceText } from '../../../shared/core/sentence.ts';

const base = defaultParameters();
/** Names as they are in a file, units as they are in the table. */
const text = (problem: Problem) => problemText(problem, { names: 'name', units: 'metric' });

function only(input: unknown, over: Parameters = base) {
  const { changes, problems } = checkParameters(input, over);
  expect(changes).toEqual({});
  expect(problems).toHaveLength(1);
  return at(problems, 0);
}

describe('one bad entry', () => {
  test.each<[string, Record<string, unknown>, RegExp]>([
    ['unknown name', { strok: 0.1 }, /^"strok" is not a parameter\. Did you mean "stroke"\?$/],
    ['name like nothing', { warpFactor: 9 }, /^"warpFactor" is not a parameter\. Remove it\.$/],
    ['inherited name', { constructor: 1 }, /^"constructor" is not a parameter/],
    [
      'text for a number',
      { payload: '5' },
      /^payload: "5" is not a number\. Enter 0, or 0\.01 kg to 2000 kg\.$/,
    ],
    ['null', { payload: null }, /^payload: it is missing/],
    ['list', { payload: [5] }, /^payload: a list is not a number/],
    ['object', { payload: { kg: 5 } }, /^payload: an object is not a number/],
    ['switch for a number', { payload: true }, /^payload: true is not a number/],
    ['NaN', { acceleration: Number.NaN }, /^acceleration: That is no number\. Enter 0\.001 m\/s²/],
    ['infinity', { acceleration: -Infinity }, /^acceleration: That number is too large\. Enter 0\.001 m\/s²/],
    [
      'too much',
      { acceleration: 5000 },
      /^acceleration: 5000 m\/s² is outside 0\.001 m\/s² to 200 m\/s²\. Enter at most 200 m\/s²\.$/,
    ],
    ['too little', { speed: 0 }, /^speed: 0 m\/s is outside 1·10⁻⁵ m\/s to 6 m\/s\. Enter at least/],
    [
      'millimetres for metres',
      { stroke: 200 },
      /^stroke: 200000 mm is outside −2000 mm to 2000 mm\. Enter at most/,
    ],
    [
      'between off and least',
      { backlash: 1e-10 },
      /^backlash: 0\.0001 µm .* Enter 0 \(off\), or at least 0\.01 µm\.$/,
    ],
    ['negative', { Kp: -1 }, /^Kp: −1 N\/m is outside 0, or 100 N\/m to 1·10⁹ N\/m/],
    [
      'part of a whole',
      { motorCount: 2.5 },
      /^motorCount: 2\.5 is not a whole number\. Enter a whole number, 1 to 4/,
    ],
    [
      'unknown choice',
      { program: 'shutle' },
      /^program: "shutle" is not one of hold, .*Did you mean "shuttle"\?$/,
    ],
    ['number for a choice', { program: 1 }, /^program: 1 is not one of hold/],
    ['number for a switch', { base: 1 }, /^base: 1 is not true or false\.$/],
  ])('%s is refused in plain words', (_case, input, message) => {
    const problem = only(input);
    expect(text(problem)).toMatch(message);
    expect(problem.field).toBe(Object.keys(input)[0]);
    expect(problem.value).toBe(Object.values(input)[0]);
  });

  test.each([null, undefined, 7, 'payload', [], () => 0])('%s in place of parameters', (input) => {
    expect(text(only(input))).toMatch(/^Parameters must be an object/);
  });

  test('legal entries beside it are kept', () => {
    const { changes, problems } = checkParameters({ payload: 3, speed: 1e9, program: 'hold' }, base);
    expect(changes).toEqual({ payload: 3, program: 'hold' });
    expect(problems.map(({ field }) => field)).toEqual(['speed']);
  });
});

describe('each number of the table', () => {
  const numbers = PARAMETER_NAMES.flatMap((name) => {
    const row = parameterRow(name);
    return row.kind === 'number' ? [{ name, row }] : [];
  });

  test.each(numbers)('$name is refused just outside its range, with the range named', ({ name, row }) => {
    const step = row.integer ? 1 : 1e-6 * Math.max(Math.abs(row.min), Math.abs(row.max));
    for (const value of [row.max + step, row.min - step]) {
      if (value === 0 && row.zero) continue;
      expect(text(only({ [name]: value }))).toMatch(new RegExp(`^${name}: .* is outside .* Enter `));
    }
  });

  test('a limit typed in display units is taken as the limit, a negative zero as zero', () => {
    expect(checkParameters({ linkStiffness: 2000 * 1e6 * (1 + 1e-15) }, base).changes).toEqual({
      linkStiffness: 2e9,
    });
    expect(Object.is(checkParameters({ payload: -0 }, base).changes.payload, 0)).toBe(true);
  });
});

describe('entries that contradict each other', () => {
  test.each<[string, Partial<Parameters>, RegExp]>([
    [
      'travel limits crossed',
      { travelMin: 0.3, travelMax: -0.3 },
      /^travelMin \(300 mm\) must be less than travelMax/,
    ],
    [
      'start outside the travel',
      { start: 0.4 },
      /^start \(400 mm\) is outside the travel, −300 mm to 300 mm/,
    ],
    [
      'shuttle leaves the travel',
      { start: 0.2, stroke: 0.2 },
      /^The shuttle would reach 400 mm, outside the travel/,
    ],
    ['scan leaves the travel', { program: 'scan', stroke: -0.3 }, /^The scan would reach −400 mm/],
    [
      'sine leaves the travel',
      { program: 'sine', start: 0.25, sineAmplitude: 0.1 },
      /^The sine would reach 350 mm/,
    ],
    [
      'staircase leaves the travel',
      { program: 'staircase', start: 0.2995, stairStep: 1e-3 },
      /^The staircase would reach 304\.5 mm/,
    ],
    [
      'step leaves the travel',
      { program: 'step', start: 0.295, stepSize: 0.01 },
      /^The step would reach 305 mm/,
    ],
    ['travel shrinks below the stroke', { travelMax: 0.05 }, /^The shuttle would reach 100 mm/],
    ['sweep runs down', { sweepFrom: 2000 }, /^sweepFrom \(2000 Hz\) must be less than sweepTo \(1000 Hz\)/],
    [
      'sweep above half the rate',
      { program: 'chirp', sweepTo: 5000 },
      /^sweepTo \(5000 Hz\) must be below half .* 4000 Hz/,
    ],
    [
      'first notch above half the rate',
      { filter1: 'notch', filter1Frequency: 4000 },
      /^filter1Frequency .* 4000 Hz/,
    ],
    [
      'second notch above half the rate',
      { filter2: 'notch', positionDivider: 16 },
      /^filter2Frequency .* 500 Hz/,
    ],
    [
      'low-pass above half the rate',
      { filter3: 'low-pass', currentRate: 4000 },
      /^filter3Frequency .* 1000 Hz/,
    ],
    [
      'fold-back above the limit',
      { foldbackTemperature: 140 },
      /^foldbackTemperature \(140 °C\) must be less than windingLimit/,
    ],
    [
      'starts hotter than the limit',
      { windingStart: 150 },
      /^windingStart \(150 °C\) must be less than windingLimit/,
    ],
    [
      'continuous above peak',
      { continuousCurrent: 30 },
      /^continuousCurrent \(30 A peak\) must be at most peakCurrent \(25 A peak\)/,
    ],
    [
      'count above signal period',
      { encoderResolution: 5e-5 },
      /^encoderResolution \(50000 nm\) must be at most signalPeriod/,
    ],
    [
      'flexible parts heavier than the table',
      { mode1: 'table', mode2: 'table', mode1Mass: 8, mode2Mass: 4 },
      /^The flexible parts on the table weigh 12 kg.* 13 kg, and may be at most 90 % of it.* or raise tableMass/,
    ],
    [
      'flexible part as heavy as the motor',
      { mode3: 'motor side', mode3Mass: 50 },
      /^The flexible parts on the motor side weigh 50 kg/,
    ],
    [
      'pulses overlap',
      { process: 'pulse', processTime: 0.06 },
      /^processTime \(60 ms\) is longer than the interval between pulses, 50 ms/,
    ],
  ])('%s', (_case, input, message) => {
    const problem = only(input);
    expect(text(problem)).toMatch(message);
    const whole = crossChecks({ ...base, ...input });
    expect(whole.map(text)).toContain(text(problem));
  });

  test('equal continuous and peak current are legal, so is a filter that is off', () => {
    const input = { continuousCurrent: 25, filter1Frequency: 7000 };
    expect(checkParameters(input, base)).toEqual({ changes: input, problems: [] });
  });

  test('a contradiction that stood before does not block another change', () => {
    const crossed = { ...base, sweepFrom: 2000 };
    expect(checkParameters({ payload: 1 }, crossed)).toEqual({ changes: { payload: 1 }, problems: [] });
  });

  test('what is left makes a legal set, whatever was thrown out', () => {
    const input = { travelMax: -0.2, travelMin: -0.25, start: -0.22, stroke: 0.1, program: 'shuttle' };
    const { changes, problems } = checkParameters(input, base);
    expect(problems).not.toHaveLength(0);
    expect(crossChecks({ ...base, ...changes })).toEqual([]);
  });
});

test('the defaults are legal', () => {
  expect(checkParameters({ ...base }, base)).toEqual({ changes: base, problems: [] });
});

test('thousands of bad entries are refused with few words', () => {
  const input = Object.fromEntries(Array.from({ length: 100_000 }, (_, i) => [`parameter${i}`, i]));
  const { problems } = checkParameters(input, base);
  expect(problems.length).toBeLessThan(30);
  expect(text(problems.at(-1)!)).toMatch(/more problems/);
});

test('an entry as long as a book is named by its beginning', () => {
  expect(text(only({ payload: 'x'.repeat(1e6) })).length).toBeLessThan(200);
  expect(text(only({ ['y'.repeat(1e6)]: 1 })).length).toBeLessThan(200);
});

test('a limit that is no short number in inches is told rounded to the legal side', () => {
  // 0.1 nm is 0.003937007… µin, 10 mm 393700.787… µin; 1 in = 25.4 mm by definition.
  const row = PARAMETERS.window;
  const told = checkValue(1e-12, row);
  expect('wrong' in told && sentenceText(told.wrong, onPage('inch'))).toMatch(
    /outside 0\.003938 µin to 393700 µin\. Enter at least 0\.003938 µin\.$/,
  );
  expect(checkValue(0.003938 * 25.4e-9, row)).toHaveProperty('legal');
  expect(checkValue(393700 * 25.4e-9, row)).toHaveProperty('legal');
});
