import { expect, test } from 'vitest';
import type { EnergyFlow } from '../../../shared/protocol/accuracy.ts';
import { SAMPLE_LETTERS, sampleCandidates, sampleOutcome } from './sampleOutcome.ts';

test.each(SAMPLE_LETTERS)('the sample of candidate %s is the same every time and has no holes', (letter) => {
  const outcome = sampleOutcome(letter);
  expect(sampleOutcome(letter)).toEqual(outcome);
  expect(JSON.stringify(outcome)).toBe(
    JSON.stringify(outcome, (_, value) => {
      if (typeof value === 'number' && !Number.isFinite(value)) throw new Error(`${value} in the sample`);
      return value;
    }),
  );
});

test('every candidate has its letter, its scene and its outcome', () => {
  expect(sampleCandidates().map(({ letter, choice }) => `${letter} ${choice.preset}`)).toEqual([
    'A tubular',
    'B u-channel',
    'C flat',
    'D screw',
  ]);
});

/** First law: what is drawn goes somewhere. */
test.each(SAMPLE_LETTERS)('energy of candidate %s adds up', (letter) => {
  const flow = sampleOutcome(letter).accuracy.energy as EnergyFlow;
  const { drawn, returned, copper, iron, guide, nut, other, work, stored } = flow;
  expect(returned + copper + iron + guide + nut + other + work + stored).toBeCloseTo(drawn, 9);
});
