import { describe, expect, it } from 'vitest';
import { parameterNamed } from '../../../shared/core/parameters/labels.ts';
import { PARAMETERS } from '../../../shared/core/parameters/table.ts';
import { entryProblem, problem, problemText, within } from '../../../shared/core/problem.ts';
import {
  AS_WRITTEN,
  approx,
  approxRanged,
  exactly,
  lowerLimit,
  onPage,
  type Sentence,
  sentence,
  sentenceText,
  upperLimit,
} from '../../../shared/core/sentence.ts';
import { tripSentence, tripText } from '../../../shared/figures/tripText.ts';
import type { Trip } from '../../../shared/protocol/axis.ts';

const inAll = (each: Sentence) =>
  [AS_WRITTEN, onPage('metric'), onPage('inch')].map((wording) => sentenceText(each, wording));

describe('a sentence', () => {
  const told = sentence`${parameterNamed('speedLimit')} is ${exactly(0.254, 'mm')},
    not ${approx(50.8, 'mm')}.`;

  it('is worded in the names and units of its reader', () => {
    expect(inAll(told)).toEqual([
      'speedLimit is 0.254 m, not 50.8 m.',
      '“Speed limit” is 254 mm, not 50800 mm.',
      '“Speed limit” is 10 in, not 2000 in.',
    ]);
  });

  it('is plain data, the same after a way through a worker', () => {
    expect(inAll(structuredClone(told))).toEqual(inAll(told));
    expect(inAll(JSON.parse(JSON.stringify(told)))).toEqual(inAll(told));
  });

  it('may hold other sentences', () => {
    expect(inAll(sentence`First: ${told} ${['Second.']}`)[0]).toBe(
      'First: speedLimit is 0.254 m, not 50.8 m. Second.',
    );
  });

  it('ranges a value in the units of its reader', () => {
    expect(inAll([approxRanged(2.54e-6, 'm')])).toEqual(['2.54 µm', '2.54 µm', '100 µin']);
  });

  it('rounds a limit to the legal side in every unit', () => {
    // 10 mm and 0.1 nm; 1 in = 25.4 mm by definition.
    const { window } = PARAMETERS;
    expect(inAll(sentence`${lowerLimit(window)} to ${upperLimit(window)}`)).toEqual([
      '1·10⁻¹⁰ m to 0.01 m',
      '0.0001 µm to 10000 µm',
      '0.003938 µin to 393700 µin',
    ]);
  });
});

describe('a problem', () => {
  const wrong = entryProblem(
    'payload',
    -1,
    sentence`${exactly(-1, 'kg')} is too little.`,
    parameterNamed('payload'),
  );

  it('says what it is about, in the name that the reader knows', () => {
    expect(problemText(wrong, AS_WRITTEN)).toBe('payload: −1 kg is too little.');
    expect(problemText(wrong, onPage('inch'))).toMatch(/^Payload: −2\.2046.* lb is too little\.$/);
  });

  it('says where that is', () => {
    const inside = within('candidates[1]', within('own', wrong), 'Candidate B');
    expect(inside.field).toBe('candidates[1].own.payload');
    expect(problemText(inside, AS_WRITTEN)).toBe('Candidate B: own: payload: −1 kg is too little.');
  });

  it('is only its message where that says all', () => {
    expect(problemText(problem('x', 1, 'All is wrong.'), AS_WRITTEN)).toBe('All is wrong.');
  });
});

describe('a trip', () => {
  it.each<[Trip, string, string, string]>([
    [
      { kind: 'following error', time: 1, limit: 0.00254, pulled: false },
      'The following error passed 0.00254 m.',
      'The following error passed 2.54 mm.',
      'The following error passed 0.1 in.',
    ],
    [
      { kind: 'over-travel', time: 1, side: 'lower', limit: -0.3 },
      'The table passed the lower travel limit at −0.3 m.',
      'The table passed the lower travel limit at −300 mm.',
      'The table passed the lower travel limit at −11.81 in.',
    ],
    [
      { kind: 'over-speed', time: 1, limit: 5 },
      'The table exceeded the speed limit of 5 m/s.',
      'The table exceeded the speed limit of 5 m/s.',
      'The table exceeded the speed limit of 196.9 in/s.',
    ],
    [
      { kind: 'over-temperature', time: 1, limit: 130 },
      'The winding reached its limit of 130 °C.',
      'The winding reached its limit of 130 °C.',
      'The winding reached its limit of 266 °F.',
    ],
  ])('of %j names its limit in the units of its reader', (trip, si, metric, inch) => {
    expect(tripText(trip, 'SI')).toContain(si);
    expect(tripText(trip, 'metric')).toContain(metric);
    expect(tripText(trip, 'inch')).toContain(inch);
  });

  it('by divergence needs no number', () => {
    expect(new Set(inAll(tripSentence({ kind: 'divergence', time: 0 }))).size).toBe(1);
  });

  it('by oscillation names the frequency at which the loop rings', () => {
    expect(tripText({ kind: 'oscillation', time: 1, frequency: 412.3 }, 'metric')).toContain(
      'at about 412 Hz',
    );
  });

  it('while the table was pulled by hand does not blame the loop', () => {
    const text = tripText({ kind: 'following error', time: 1, limit: 0.002, pulled: true }, 'metric');
    expect(text).toContain('pulled by hand');
    expect(text).not.toContain('unstable');
  });
});
