import { expect, it } from 'vitest';
import { SCENES, SHELF } from '../../../scenes/index.ts';
import { at, present } from '../../../shared/core/at.ts';
import { LOOP_FIGURE_NAMES } from '../../../shared/figures/loopFigures.ts';
import { MOVE_FIGURE_NAMES } from '../../../shared/figures/moveFigures.ts';
import { readLesson } from '../../../shared/files/lesson/lessonFile.ts';
import { writeLesson } from '../../../shared/files/lesson/writeLesson.ts';
import { sourceLabel } from '../../../shared/lesson/measureText.ts';
import {
  figureGroups,
  measuresFigure,
  NEW_LESSON,
  withFigure,
  withoutStep,
  withRecording,
  withStep,
  withStepMoved,
} from '../../../src/lessons/record/draft.ts';
import { PLAIN_VIEW } from '../../shared/lesson/plainView.ts';

const recorded = [0, 1, 2].reduce((lesson, k) => {
  const scene = at(SCENES, k);
  return withRecording(lesson, { session: { scene, events: [], ticks: 16000 }, view: PLAIN_VIEW, pace: 1 });
}, NEW_LESSON);
const PEAK_ERROR = { kind: 'move', figure: 'peakError', take: 'last' } as const;
const titles = ({ steps }: typeof recorded) => steps.map(({ title }) => title);
const [a, b, c] = titles(recorded);

it('a recording is a step at the end, named after its scene', () => {
  expect(titles(recorded)).toEqual(SCENES.slice(0, 3).map(({ title }) => title));
});

it('steps change places, and stay where there is no place left', () => {
  expect(titles(withStepMoved(recorded, 2, -1))).toEqual([a, c, b]);
  expect(titles(withStepMoved(recorded, 0, 1))).toEqual([b, a, c]);
  expect(withStepMoved(recorded, 0, -1)).toBe(recorded);
  expect(withStepMoved(recorded, 2, 1)).toBe(recorded);
});

it('a step is written and deleted without touching the others', () => {
  expect(titles(withStep(recorded, 1, { title: 'Second' }))).toEqual([a, 'Second', c]);
  expect(titles(withoutStep(recorded, 0))).toEqual([b, c]);
});

it('the same figure in two steps has two names, also after one was taken out again', () => {
  const both = withFigure(withFigure(recorded, 0, PEAK_ERROR, true), 1, PEAK_ERROR, true);
  const ids = (lesson: typeof recorded) => lesson.steps.map(({ measures }) => measures.map(({ id }) => id));
  expect(ids(both)).toEqual([['peakError 1'], ['peakError 2'], []]);
  const again = withFigure(withFigure(both, 0, PEAK_ERROR, false), 2, PEAK_ERROR, true);
  expect(ids(again)).toEqual([[], ['peakError 2'], ['peakError 1']]);
});

it('every figure of a move and of the loop is offered, and one of each kind is measured, written and read back', () => {
  const groups = figureGroups(at(recorded.steps, 0));
  const offered = groups.flatMap(({ sources }) => sources);
  expect(offered.filter(({ kind }) => kind === 'move')).toHaveLength(MOVE_FIGURE_NAMES.length);
  expect(offered.filter(({ kind }) => kind === 'loop')).toHaveLength(LOOP_FIGURE_NAMES.length);
  expect(new Set(offered.map(sourceLabel)).size).toBe(offered.length);
  const chosen = ['move', 'trip', 'channel', 'loop'].map((kind) =>
    present(offered.find((each) => each.kind === kind)),
  );
  const written = chosen.reduce((lesson, source) => withFigure(lesson, 0, source, true), {
    ...withoutStep(withoutStep(recorded, 2), 1),
    title: 'Figures',
    aim: 'All kinds.',
  });
  const spoken = withStep(written, 0, { text: 'Watch.', answer: { text: 'So.', claims: [], notShown: '' } });
  const read = readLesson(writeLesson(spoken, SHELF), SHELF);
  if ('problems' in read) throw new Error(JSON.stringify(read.problems));
  const [step] = read.lesson.steps;
  for (const source of chosen) expect(measuresFigure(present(step), source)).toBe(true);
  expect(figureGroups({ ...present(step), run: null }).map(({ sources }) => sources[0]?.kind)).toEqual([
    'loop',
  ]);
});
