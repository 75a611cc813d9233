import { at } from '../../../shared/core/at.ts';
import { CHANNEL_NAMES, type ChannelName } from '../../../shared/core/channels.ts';
import { PARAMETER_NAMES, type ParameterName } from '../../../shared/core/parameters/table.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { LOOP_FIGURE_NAMES } from '../../../shared/figures/loopFigures.ts';
import { MOVE_FIGURE_NAMES } from '../../../shared/figures/moveFigures.ts';
import type { Lesson, LessonStep, Measure, MeasureSource } from '../../../shared/lesson/lesson.ts';
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

/** Figures that may be measured in a step, under a heading. */
interface FigureGroup {
  readonly heading: string;
  readonly sources: readonly MeasureSource[];
}

/** Not measured of a run: the clock, and what only checks the simulation. */
const UNMEASURED: readonly ChannelName[] = ['time', 'energyResidual'];

/** All that the bench measures. A step that does not run has figures of its loop alone. */
export function figureGroups({ run }: LessonStep): readonly FigureGroup[] {
  const loop = LOOP_FIGURE_NAMES.map((figure) => ({ kind: 'loop', figure }) as const);
  const ofLoop = { heading: 'Of the loop, with the guide sliding', sources: loop };
  if (!run) return [ofLoop];
  const moves = MOVE_FIGURE_NAMES.map((figure) => ({ kind: 'move', figure, take: 'last' }) as const);
  const channels = CHANNEL_NAMES.filter((channel) => !UNMEASURED.includes(channel)).map(
    (channel) => ({ kind: 'channel', channel, take: 'peak', from: 0, to: run.seconds }) as const,
  );
  return [
    { heading: 'Of the last move', sources: moves },
    { heading: 'Of the whole run', sources: [{ kind: 'trip' }, ...channels] },
    ofLoop,
  ];
}

/** What tells two figures of a step apart, also where one is taken otherwise than is offered. */
function figureName(source: MeasureSource): string {
  if (source.kind === 'trip') return source.kind;
  return source.kind === 'channel' ? source.channel : source.figure;
}

const isOf = ({ source }: Measure, figure: MeasureSource) =>
  source.kind === figure.kind && figureName(source) === figureName(figure);

export function measuresFigure({ measures }: LessonStep, figure: MeasureSource): boolean {
  return measures.some((measure) => isOf(measure, figure));
}

/** The lesson with a figure measured in a step, or no longer. No name stands for two figures of a lesson. */
export function withFigure(lesson: Lesson, index: number, figure: MeasureSource, wanted: boolean): Lesson {
  const { measures } = at(lesson.steps, index);
  if (!wanted) return withStep(lesson, index, { measures: measures.filter((each) => !isOf(each, figure)) });
  const taken = new Set(lesson.steps.flatMap((step) => step.measures.map(({ id }) => id)));
  let number = 1;
  const name = figureName(figure);
  while (taken.has(`${name} ${number}`)) number++;
  const measure: Measure = { id: `${name} ${number}`, of: '', source: figure };
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
