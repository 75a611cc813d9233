import { type Failure, MAX_PROBLEMS, type Problem } from '../../core/problem.ts';
import type { Shelf } from '../../core/scene.ts';
import type { Lesson, LessonStep, Measure } from '../../lesson/lesson.ts';
import { openFile } from '../jsonFile.ts';
import { EntryReader, LONGEST_LINE, LONGEST_PARAGRAPH } from './entryReader.ts';
import { readStep } from './lessonSteps.ts';

/**
 * A lesson file is JSON, all values SI:
 *
 *     { "waybench": "lesson", "version": 1, "title": "…", "aim": "…", "notes": ["…"], "steps": [ … ] }
 *
 * A step is
 *
 *     { "title": "…", "text": "…", "notes": "…",
 *       "scene": "mould-shuttle", "parameters": { "payload": 4 },
 *       "view": { "cutaway": "closed", "area": "motion", "window": 5, "camera": { "turn": 0.2, "closer": 2 } },
 *       "pointAt": [{ "chart": "Force" }, { "field": "Kd" }],
 *       "question": { "text": "…", "answers": ["…", "…"], "right": 0 },
 *       "run": { "seconds": 4, "pace": 2, "hand": [{ "time": 0, "to": 0.01 }, { "time": 2, "to": null }],
 *                "changes": [{ "time": 1, "parameters": { … } }] },
 *       "measures": [{ "id": "iron", "of": "with iron", "move": "rmsError" },
 *                    { "id": "ripple", "channel": "forceCurrent", "take": "peak to peak", "from": 1, "to": 4 },
 *                    { "id": "margin", "loop": "gainMargin" }, { "id": "trip", "trip": true }],
 *       "answer": { "text": "…", "claims": [{ "measure": "iron", "is": "more than", "times": 2, "than": "ironless" }],
 *                   "notShown": "…" } }
 *
 * `scene` is the id of a scene of the shelf, or a whole scene file. `right` counts the answers from 0. A claim may quote measures of
 * earlier steps.
 */
export const LESSON_VERSION = 1;

const FILE_ENTRIES = ['waybench', 'version', 'title', 'aim', 'notes', 'steps'];

/** Forty minutes have room for no more. */
const MAX_STEPS = 20;
const MAX_NOTES = 20;

/** Reads the text of a lesson file, or its parsed value. Total: a complete legal lesson, or what is wrong. */
export function readLesson(input: unknown, shelf: Shelf): { readonly lesson: Lesson } | Failure {
  const opened = openFile(input, 'lesson', LESSON_VERSION);
  if ('problems' in opened) return opened;
  const problems: Problem[] = [];
  const file = new EntryReader(opened.entries, '', FILE_ENTRIES, problems);
  const title = file.text('title', LONGEST_LINE);
  const aim = file.text('aim', LONGEST_PARAGRAPH);
  const notes = file.lines('notes', [0, MAX_NOTES], LONGEST_PARAGRAPH);
  const measures: Measure[] = [];
  const steps: LessonStep[] = [];
  for (const { value, place } of file.list('steps', [1, MAX_STEPS])) {
    const step = readStep(value, place, { shelf, measures, problems });
    if (step) steps.push(step);
  }
  if (problems.length > 0) return { problems: problems.slice(0, MAX_PROBLEMS) };
  return { lesson: { title, aim, notes, steps } };
}
