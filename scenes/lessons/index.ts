import { problemTexts } from '../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { readLesson } from '../../shared/files/lesson/lessonFile.ts';
import type { Lesson } from '../../shared/lesson/lesson.ts';
import { SHELF } from '../index.ts';
import chipsOnMagnets from './chips-on-magnets.json' with { type: 'json' };
import coggingByHand from './cogging-by-hand.json' with { type: 'json' };
import delayAndPhase from './delay-and-phase.json' with { type: 'json' };
import fiveNanometres from './five-nanometres.json' with { type: 'json' };
import followingError from './following-error.json' with { type: 'json' };
import gapAndEccentricity from './gap-and-eccentricity.json' with { type: 'json' };
import heatAndForce from './heat-and-force.json' with { type: 'json' };
import lastNanometre from './last-nanometre.json' with { type: 'json' };
import motorsOnOneAmplifier from './motors-on-one-amplifier.json' with { type: 'json' };
import resonanceAndGain from './resonance-and-gain.json' with { type: 'json' };
import screwOrDirect from './screw-or-direct.json' with { type: 'json' };
import slowScan from './slow-scan.json' with { type: 'json' };
import whatMakesForce from './what-makes-force.json' with { type: 'json' };

/** A lesson with the name it has in links. */
interface ShelfLesson {
  readonly id: string;
  readonly lesson: Lesson;
}

/** The lessons that are offered, in the order in which they build on each other. */
export const LESSONS: readonly ShelfLesson[] = [
  onShelf('what-makes-force', whatMakesForce),
  onShelf('cogging-by-hand', coggingByHand),
  onShelf('slow-scan', slowScan),
  onShelf('gap-and-eccentricity', gapAndEccentricity),
  onShelf('heat-and-force', heatAndForce),
  onShelf('following-error', followingError),
  onShelf('last-nanometre', lastNanometre),
  onShelf('five-nanometres', fiveNanometres),
  onShelf('resonance-and-gain', resonanceAndGain),
  onShelf('delay-and-phase', delayAndPhase),
  onShelf('screw-or-direct', screwOrDirect),
  onShelf('chips-on-magnets', chipsOnMagnets),
  onShelf('motors-on-one-amplifier', motorsOnOneAmplifier),
];

function onShelf(id: string, file: unknown): ShelfLesson {
  const read = readLesson(file, SHELF);
  if ('lesson' in read) return { id, lesson: read.lesson };
  throw new Error(
    [`lessons/${id}.json is not legal.`, ...problemTexts(read.problems, AS_WRITTEN)].join('\n'),
  );
}
