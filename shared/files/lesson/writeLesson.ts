import { PARAMETER_NAMES, type ParameterName } from '../../core/parameters/table.ts';
import type { Scene, Shelf } from '../../core/scene.ts';
import { MODEL_VERSION } from '../../core/version.ts';
import type { Claim, Lesson, LessonStep, Measure, MeasureSource } from '../../lesson/lesson.ts';
import { sceneEntries } from '../sceneFile.ts';
import { LESSON_VERSION } from './lessonFile.ts';

/** Reads back as the same lesson. */
export function writeLesson({ title, aim, notes, steps }: Lesson, shelf: Shelf): string {
  const entries = {
    waybench: 'lesson',
    version: LESSON_VERSION,
    model: MODEL_VERSION,
    title,
    aim,
    notes,
    steps: steps.map((step) => stepEntries(step, shelf)),
  };
  return `${JSON.stringify(entries, null, 2)}\n`;
}

function stepEntries(step: LessonStep, shelf: Shelf) {
  const { title, text, notes, scene, view, pointAt, question, run, measures, answer } = step;
  const { window, ...look } = view;
  return {
    title,
    text,
    notes,
    ...sceneOf(scene, shelf),
    view: window === null ? look : { ...look, window },
    pointAt,
    ...(question && { question }),
    ...(run && { run }),
    measures: measures.map(measureEntries),
    answer: { ...answer, claims: answer.claims.map(claimEntries) },
  };
}

/** By its name and what differs, where the scene is one of the shelf. */
function sceneOf(scene: Scene, { scenes }: Shelf): object {
  const known = scenes.find(({ id }) => id !== null && id === scene.id);
  if (!known || !isSameButParameters(scene, known)) return { scene: sceneEntries(scene) };
  const changed = PARAMETER_NAMES.filter((name) => scene.parameters[name] !== known.parameters[name]);
  const setTo = (name: ParameterName) => [name, scene.parameters[name]] as const;
  return {
    scene: scene.id,
    ...(changed.length > 0 && { parameters: Object.fromEntries(changed.map(setTo)) }),
  };
}

function isSameButParameters(scene: Scene, known: Scene): boolean {
  const others = (of: Scene) => JSON.stringify({ ...sceneEntries(of), parameters: null });
  return others(scene) === others(known);
}

function measureEntries({ id, of, source }: Measure): object {
  return { id, of, ...sourceEntries(source) };
}

function sourceEntries(source: MeasureSource): object {
  switch (source.kind) {
    case 'move':
      return { move: source.figure, take: source.take };
    case 'loop':
      return { loop: source.figure };
    case 'trip':
      return { trip: true };
    case 'channel': {
      const { kind: _, ...entries } = source;
      return entries;
    }
  }
}

function claimEntries({ than, ...claim }: Claim): object {
  return than === null ? claim : { ...claim, than };
}
