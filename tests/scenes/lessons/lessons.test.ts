import { describe, expect, it } from 'vitest';
import { LESSONS } from '../../../scenes/lessons/index.ts';
import { checkLesson, QUICK_LESSONS } from './checkLesson.ts';

describe.each(LESSONS)('lesson “$lesson.title”', ({ lesson }) => {
  it('asks for a prediction and runs in every step, and claims something in the answer', () => {
    for (const { title, question, run, answer } of lesson.steps) {
      expect(question, title).not.toBeNull();
      expect(run, title).not.toBeNull();
      expect(answer.claims.length, title).toBeGreaterThan(0);
      expect(answer.notShown, title).not.toBe('');
    }
  });

  it('tells the trainer how long it takes and what to beware of on a real machine', () => {
    expect(lesson.notes[0]).toMatch(/^About \w+ minutes\./);
    expect(lesson.notes.join(' ')).toMatch(/\breal\b/);
  });
});

for (const lesson of QUICK_LESSONS) checkLesson(lesson);
