import { expect, it } from 'vitest';
import { type Holding, whatGrew } from './growth.ts';

const AT_FIRST: Holding = { pageHeap: 1e8, workerHeap: 6e6, nodes: 11000, listeners: 2500, workers: 4 };
const rounds = (next: (round: number) => Partial<Holding>) =>
  Array.from({ length: 16 }, (_, round) => ({ ...AT_FIRST, ...next(round) }));

it('finds a listener more with every round, and memory that is kept', () => {
  expect(whatGrew(rounds((round) => ({ listeners: 2500 + 12 * round })))).toEqual([
    'listeners grew from 2584 to 2644 within 16 rounds',
  ]);
  expect(whatGrew(rounds((round) => ({ pageHeap: 1e8 + 2e6 * round })))).toHaveLength(1);
});

it('takes what is loaded at first, and what comes and goes, for no growth', () => {
  expect(whatGrew(rounds((round) => ({ nodes: 9000 + 1000 * Math.min(round, 4) })))).toEqual([]);
  expect(
    whatGrew(rounds((round) => ({ nodes: 11000 + 50 * (round % 3), pageHeap: 1e8 + 1e5 * (round % 5) }))),
  ).toEqual([]);
});
