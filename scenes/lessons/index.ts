import { problemTexts } from '../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { readLesson } from '../../shared/files/lesson/lessonFile.ts';
import type { Lesson } from '../../shared/lesson/lesson.ts';
import { SHELF } from '../index.ts';
import coggingByHand from './cogging-by-hand.json' with { type: 'json' };
import delayAndPhase from './delay-and-phase.json' with { type: 'json' };
import followingError from './following-error.json' with { type: 'json' };
import slowScan from './slow-scan.json' with { type: 'json' };

/** The lessons that are offered, in the order in which they build on each other. */
export const LESSONS: readonly Lesson[] = [
  lesson('cogging-by-hand', coggingByHand),
  lesson('slow-scan', slowScan),
  lesson('following-error', followingError),
  lesson('delay-and-phase', delayAndPhase),
];

function lesson(name: string, file: unknown): Lesson {
  const read = readLesson(file, SHELF);
  if ('lesson' in read) return read.lesson;
  throw new Error(
    [`lessons/${name}.json is not legal.`, ...problemTexts(read.problems, AS_WRITTEN)].join('\n'),
  );
}
