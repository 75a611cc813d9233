import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../scenes/defaultStudy.ts';
import { PRESETS, SCENES, SHELF } from '../../scenes/index.ts';
import { LESSONS } from '../../scenes/lessons/index.ts';
import { defaultParameters } from '../../shared/core/parameters/table.ts';
import { type Problem, problemTexts } from '../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../shared/core/sentence.ts';
import { gainsFromSheet, writeGainSheet, writeGainSheetCsv } from '../../shared/files/gainSheetFile.ts';
import { readLesson } from '../../shared/files/lesson/lessonFile.ts';
import { writeLesson } from '../../shared/files/lesson/writeLesson.ts';
import { readLessonLink } from '../../shared/files/lessonLink.ts';
import { readScene, writeScene } from '../../shared/files/sceneFile.ts';
import { readLink, writeLink } from '../../shared/files/sceneLink.ts';
import { readSession, writeSession } from '../../shared/files/sessionFile.ts';
import { readSnapshots, writeSnapshots } from '../../shared/files/snapshots.ts';
import { readStudy, writeStudy } from '../../shared/files/studyFile.ts';
import { readStudyLink, writeStudyLink } from '../../shared/files/studyLink.ts';
import { gainSheet } from '../../shared/sheet/gainSheet.ts';
import { readMoveList, writeMoveList } from '../../shared/study/moveList.ts';
import { readTraceTable } from '../../src/tuning/trace/traceTable.ts';
import { COUNTS, SEED } from './counts.ts';
import { damaged } from './mutations.ts';

interface Format {
  readonly name: string;
  /** Legal texts. */
  readonly texts: readonly string[];
  /** Total: what was read, or what is wrong. */
  read(text: string): object;
}

const p = defaultParameters();
const [scene] = SCENES;
if (!scene) throw new Error('no scene on the shelf');
const sheet = gainSheet(scene);
const moves = [{ to: 0.05, speed: 0.5, acceleration: 5, jerk: 500, dwell: 0.1 }];
const events = [
  { tick: 5, kind: 'change' as const, changes: { Kp: 1e6 } },
  { tick: 9, kind: 'hand' as const, position: 0.01 },
];

const FORMATS: readonly Format[] = [
  { name: 'scene', texts: SCENES.map(writeScene), read: (text) => readScene(text, SHELF) },
  { name: 'study', texts: [writeStudy(DEFAULT_STUDY)], read: (text) => readStudy(text, PRESETS) },
  {
    name: 'lesson',
    texts: LESSONS.map(({ lesson }) => writeLesson(lesson, SHELF)),
    read: (text) => readLesson(text, SHELF),
  },
  {
    name: 'session',
    texts: [writeSession({ scene, events, ticks: 20 })],
    read: (text) => readSession(text, SHELF),
  },
  {
    name: 'gain sheet',
    texts: [writeGainSheet(sheet), writeGainSheetCsv(sheet)],
    read: (text) => gainsFromSheet(text, p),
  },
  {
    name: 'snapshots',
    texts: [writeSnapshots([{ name: 'stiff', tuning: { Kp: 1e6 } }])],
    read: readSnapshots,
  },
  {
    name: 'link of a scene',
    texts: SCENES.map((each) => writeLink(each, SHELF)),
    read: (text) => readLink(text, SHELF),
  },
  {
    name: 'link of a study',
    texts: [writeStudyLink(DEFAULT_STUDY)],
    read: (text) => readStudyLink(text, PRESETS),
  },
  { name: 'link of a lesson', texts: ['lesson=slow-scan&step=2'], read: readLessonLink },
  { name: 'list of moves', texts: [writeMoveList(moves)], read: (text) => readMoveList(text, p) },
  {
    name: 'measured trace',
    texts: ['time (s),position (mm),current (A)\n0,0,0.1\n0.001,0.01,0.2\n0.002,0.04,0.2\n'],
    read: readTraceTable,
  },
];

describe.each(FORMATS)('a damaged $name', ({ texts, read }) => {
  it('is read or refused in words, and leaves nothing behind', () => {
    fc.assert(
      fc.property(damaged(texts), (text) => {
        const found = read(text) as { readonly problems?: readonly Problem[] };
        if (found.problems && found.problems.length > 0)
          for (const words of problemTexts(found.problems, AS_WRITTEN))
            expect(words).toMatch(/^(?!.*(?:undefined|\[object)).*[.!?]$/s);
        expect(Object.keys(Object.prototype)).toEqual([]);
        expect('polluted' in {}).toBe(false);
      }),
      { numRuns: Math.ceil(COUNTS.mutations / FORMATS.length), seed: SEED },
    );
  });
});
