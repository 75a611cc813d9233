import { expect, it } from 'vitest';
import { compared, isWithin } from './agreement.ts';
import { randomScene } from './randomScenes.ts';

const COUNT = 500;

it(`agrees on ${COUNT} legal scenes drawn at random wherever the live engine agrees with itself, and on no fewer than it`, () => {
  const results = Array.from({ length: COUNT }, (_, number) => ({
    number,
    ...compared(randomScene(number), 0.15),
  }));
  const numbers = (list: typeof results) => list.map(({ number }) => number);
  // A lost motion that rattles, a loop that has run away: what is computed there is a matter of the last digits.
  const decided = results.filter(({ live }) => isWithin(live));
  expect(numbers(decided.filter(({ batch }) => !isWithin(batch)))).toEqual([]);
  expect(
    numbers(decided.filter(({ ticks, trips }) => ticks[0] !== ticks[1] || trips[0] !== trips[1])),
  ).toEqual([]);
  expect(decided.length).toBeGreaterThan(0.95 * COUNT);
  expect(results.filter(({ batch }) => isWithin(batch)).length).toBeGreaterThanOrEqual(decided.length);
  expect(numbers(results.filter(({ energyHolds }) => !energyHolds))).toEqual([]);
});
