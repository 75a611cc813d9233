import { describe, expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { claimHolds, claimText } from '../../../shared/lesson/claim.ts';
import type { Lesson } from '../../../shared/lesson/lesson.ts';
import { runLesson } from './runLesson.ts';

/** Simulated seconds of all steps of a lesson that is run with the quick tests. */
const QUICK = 4.5;

const secondsOf = ({ steps }: Lesson) => steps.reduce((sum, { run }) => sum + (run?.seconds ?? 0), 0);
const lessons = LESSONS.map(({ lesson }) => lesson);

export const QUICK_LESSONS = lessons.filter((lesson) => secondsOf(lesson) <= QUICK);
export const LONG_LESSONS = lessons.filter((lesson) => secondsOf(lesson) > QUICK);

/** Runs a lesson without a page and checks that it measures what it quotes and that every claim holds. */
export function checkLesson(lesson: Lesson): void {
  describe(`lesson “${lesson.title}”`, () => {
    const measured = runLesson(lesson);
    const measures = lesson.steps.flatMap((step) => step.measures);

    it('measures every figure that it quotes', () => {
      for (const { id } of measures) expect(measured.get(id), id).not.toBeNaN();
    });

    const claims = lesson.steps.flatMap(({ answer }) => answer.claims);
    it.each(claims.map((claim) => ({ claim, text: claimText(claim, measures, measured) })))(
      'bears out: $text',
      ({ claim }) => expect(claimHolds(claim, measured)).toBe(true),
    );
  });
}
