import { expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { measuredHead } from '../../../src/lessons/answerParts.ts';

const headOf = (lesson: string, title: string) => {
  const { steps } = present(LESSONS.find(({ id }) => id === lesson)).lesson;
  return measuredHead(present(steps.find((step) => step.title === title)));
};

it('says in which part of the run figures were read, where it is the same for all', () => {
  expect(headOf('cogging-by-hand', 'An ironless motor, switched off')).toBe(
    'Measured just now, from 1 to 4.3 s',
  );
  // The first and the last of many moves.
  expect(headOf('screw-or-direct', 'Growth by heat')).toBe('Measured just now');
});

it('says nothing of it where only figures of moves were read', () => {
  const { steps } = present(LESSONS.find(({ id }) => id === 'following-error')).lesson;
  const step = present(steps.find(({ measures }) => measures.every(({ source }) => source.kind === 'move')));
  expect(at(step.measures, 0).source.kind).toBe('move');
  expect(measuredHead(step)).toBe('Measured just now');
});
