import { checkLesson, LONG_LESSONS } from './checkLesson.ts';

for (const lesson of LONG_LESSONS) checkLesson(lesson);
