import { expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import {
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
  const both = withFigure(withFigure(recorded, 0, 'peakError', true), 1, 'peakError', true);
  const ids = (lesson: typeof recorded) => lesson.steps.map(({ measures }) => measures.map(({ id }) => id));
  expect(ids(both)).toEqual([['peakError 1'], ['peakError 2'], []]);
  const again = withFigure(withFigure(both, 0, 'peakError', false), 2, 'peakError', true);
  expect(ids(again)).toEqual([[], ['peakError 2'], ['peakError 1']]);
});
