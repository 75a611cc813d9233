import { at } from '../../../shared/core/at.ts';
import { PARAMETER_NAMES, type ParameterName } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { Lesson, LessonStep, Measure } from '../../../shared/lesson/lesson.ts';
import { type Recording, recordedStep } from '../../../shared/lesson/recordedStep.ts';

export const NEW_LESSON: Lesson = { title: '', aim: '', notes: [], steps: [] };

/** The lesson with what was recorded as its last step. */
export function withRecording(lesson: Lesson, recording: Recording): Lesson {
  const { title } = recording.session.scene;
  return { ...lesson, steps: [...lesson.steps, recordedStep(recording, title)] };
}

export function withStep(lesson: Lesson, index: number, changes: Partial<LessonStep>): Lesson {
  return {
    ...lesson,
    steps: lesson.steps.map((step, k) => (k === index ? { ...step, ...changes } : step)),
  };
}

/** The step one place earlier (−1) or later (1); the same lesson at either end. */
export function withStepMoved(lesson: Lesson, index: number, by: -1 | 1): Lesson {
  const to = index + by;
  if (to < 0 || to >= lesson.steps.length) return lesson;
  const steps = [...lesson.steps];
  [steps[index], steps[to]] = [at(steps, to), at(steps, index)];
  return { ...lesson, steps };
}

export function withoutStep(lesson: Lesson, index: number): Lesson {
  return { ...lesson, steps: lesson.steps.filter((_, k) => k !== index) };
}

/** What may be measured of any run without saying when. */
export const OFFERED_FIGURES = ['peakError', 'rmsError', 'settlingTime', 'peakForce', 'copperLoss'] as const;
type OfferedFigure = (typeof OFFERED_FIGURES)[number];

const isOf = ({ source }: Measure, figure: OfferedFigure) =>
  source.kind === 'move' && source.figure === figure;

export function measuresFigure({ measures }: LessonStep, figure: OfferedFigure): boolean {
  return measures.some((measure) => isOf(measure, figure));
}

/** The lesson with a figure measured in a step, or no longer. No name stands for two figures of a lesson. */
export function withFigure(lesson: Lesson, index: number, figure: OfferedFigure, wanted: boolean): Lesson {
  const { measures } = at(lesson.steps, index);
  if (!wanted) return withStep(lesson, index, { measures: measures.filter((each) => !isOf(each, figure)) });
  const taken = new Set(lesson.steps.flatMap((step) => step.measures.map(({ id }) => id)));
  let number = 1;
  while (taken.has(`${figure} ${number}`)) number++;
  const measure: Measure = {
    id: `${figure} ${number}`,
    of: '',
    source: { kind: 'move', figure, take: 'last' },
  };
  return withStep(lesson, index, { measures: [...measures, measure] });
}

/** What a step sets otherwise than its scene on the shelf, and what changes while it runs. */
export function changedIn({ scene, run, pointAt }: LessonStep, known: Scene | undefined): ParameterName[] {
  const inRun = new Set(run?.changes.flatMap(({ parameters }) => Object.keys(parameters)));
  const pointed = new Set(pointAt.flatMap((pointer) => ('field' in pointer ? [pointer.field] : [])));
  return PARAMETER_NAMES.filter(
    (name) =>
      inRun.has(name) ||
      pointed.has(name) ||
      (known !== undefined && scene.parameters[name] !== known.parameters[name]),
  );
}
