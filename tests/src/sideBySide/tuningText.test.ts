import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { tuningText } from '../../../src/sideBySide/tuningText.ts';

const candidates = (...tuned: boolean[]) =>
  tuned.map((is, i) => ({ letter: at('ABCD', i), choice: { gains: is ? { kp: 1 } : null } }));

describe('what is said of the tuning', () => {
  it.each([
    [candidates(true, true), 'Every drive is pretuned to the same peak sensitivity M_S = 1.5.'],
    [candidates(false, false), 'Not tuned yet, start gains: A, B.'],
    [
      candidates(true, false, true),
      'Pretuned to the same peak sensitivity M_S = 1.5: A, C. Not tuned yet, start gains: B.',
    ],
    [[], 'No drive has been chosen yet.'],
  ])('%#', (which, text) => expect(tuningText(which, 1.5)).toBe(text));
});
