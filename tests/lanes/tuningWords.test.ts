import { describe, expect, it } from 'vitest';
import { tuningWords } from '../../src/lanes/tuningWords.ts';

const lanes = (...tuned: boolean[]) =>
  tuned.map((is, i) => ({ letter: 'ABCD'[i]!, choice: { gains: is ? { kp: 1 } : null } }));

describe('what is said of the tuning', () => {
  it.each([
    [lanes(true, true), 'Every drive is pretuned to the same peak sensitivity M_S = 1.5.'],
    [lanes(false, false), 'Not tuned yet, start gains: A, B.'],
    [
      lanes(true, false, true),
      'Pretuned to the same peak sensitivity M_S = 1.5: A, C. Not tuned yet, start gains: B.',
    ],
    [[], 'No drive has been chosen yet.'],
  ])('%#', (which, words) => expect(tuningWords(which, 1.5)).toBe(words));
});
