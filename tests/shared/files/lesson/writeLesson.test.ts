import { expect, it } from 'vitest';
import { SHELF } from '../../../../scenes/index.ts';
import { LESSONS } from '../../../../scenes/lessons/index.ts';
import { at } from '../../../../shared/core/at.ts';
import { readLesson } from '../../../../shared/files/lesson/lessonFile.ts';
import { writeLesson } from '../../../../shared/files/lesson/writeLesson.ts';

it.each(LESSONS)('“$lesson.title” reads back as it was written', ({ lesson }) => {
  expect(readLesson(writeLesson(lesson, SHELF), SHELF)).toEqual({ lesson });
});

it('names a scene of the shelf, with what differs, and writes any other whole', () => {
  const { lesson } = at(LESSONS, 0);
  const step = at(lesson.steps, 0);
  const heavy = { ...step.scene, parameters: { ...step.scene.parameters, payload: 7 } };
  const own = { ...heavy, id: null, title: 'A scene of my own' };
  const written = JSON.parse(
    writeLesson({ ...lesson, steps: [heavy, own].map((scene) => ({ ...step, scene })) }, SHELF),
  );
  expect(written.steps[0].scene).toBe(step.scene.id);
  expect(written.steps[0].parameters.payload).toBe(7);
  expect(written.steps[1].scene.title).toBe('A scene of my own');
  expect(written.steps[1].scene.parameters.payload).toBe(7);
});
