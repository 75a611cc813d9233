import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { tuningText } from '../../../src/sideBySide/tuningText.ts';

type Kind = 'tuned' | 'untuned' | 'ruled out';

const candidates = (...kinds: Kind[]) =>
  kinds.map((kind, i) => ({
    letter: at('ABCD', i),
    choice: { gains: kind === 'untuned' ? null : { kp: 1 } },
    sizing: { passes: kind !== 'ruled out' },
  }));

describe('what is said of the tuning', () => {
  it.each([
    [
      candidates('tuned', 'tuned'),
      'Every drive is pretuned to the same limit, a peak sensitivity M_S of at most 1.5.',
    ],
    [candidates('untuned', 'untuned'), 'Not tuned yet, start gains: A, B.'],
    [
      candidates('tuned', 'untuned', 'tuned'),
      'Pretuned to the same limit, a peak sensitivity M_S of at most 1.5: A, C. Not tuned yet, start gains: B.',
    ],
    // One alone is the same as nobody, and what is ruled out has gains that nobody tuned.
    [
      candidates('tuned', 'ruled out'),
      'Pretuned to a peak sensitivity M_S of at most 1.5: A. Ruled out by the sizing, start gains: B.',
    ],
    [[], 'No drive has been chosen yet.'],
  ])('%#', (which, text) => expect(tuningText(which, 1.5)).toBe(text));
});
