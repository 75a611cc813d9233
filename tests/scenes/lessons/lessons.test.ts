import { describe, expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { claimHolds, claimText } from '../../../shared/lesson/claim.ts';
import { runLesson } from './runLesson.ts';

describe.each(LESSONS)('lesson “$lesson.title”', ({ lesson }) => {
  const measured = runLesson(lesson);
  const measures = lesson.steps.flatMap((step) => step.measures);

  it('claims something in every step that asks something', () => {
    const silent = lesson.steps.filter(({ question, answer }) => question && answer.claims.length === 0);
    expect(silent.map(({ title }) => title)).toEqual([]);
  });

  it('measures every figure that it quotes', () => {
    for (const { id } of measures) expect(measured.get(id), id).not.toBeNaN();
  });

  const claims = lesson.steps.flatMap(({ answer }) => answer.claims);
  it.each(claims.map((claim) => ({ claim, text: claimText(claim, measures, measured) })))(
    'bears out: $text',
    ({ claim }) => expect(claimHolds(claim, measured)).toBe(true),
  );
});
