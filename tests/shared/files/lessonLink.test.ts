import { expect, it } from 'vitest';
import { lessonLink, readLessonLink } from '../../../shared/files/lessonLink.ts';
import { isLessonLink } from '../../../shared/files/lessonLinkKey.ts';

it('leads back to the step it was made at', () => {
  const link = `#${lessonLink('slow-scan', 1)}`;
  expect(isLessonLink(link)).toBe(true);
  expect(readLessonLink(link)).toEqual({ id: 'slow-scan', step: 1 });
});

it.each([
  ['#lesson=slow-scan', 'slow-scan', 0],
  ['#lesson=slow-scan&step=-3', 'slow-scan', 0],
  ['#lesson=slow-scan&step=two', 'slow-scan', 0],
  ['#lesson=slow-scan&step=0', 'slow-scan', 0],
  ['#lesson=', '', 0],
])('%s is the lesson %s from step index %d', (link, id, step) => {
  expect(readLessonLink(link)).toEqual({ id, step });
});

it.each(['#study=x', '#scene', ''])('%s is none', (link) => expect(isLessonLink(link)).toBe(false));
