import { expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { readStudy, writeStudy } from '../../../shared/files/studyFile.ts';
import type { CandidateOutcome } from '../../../shared/study/outcome.ts';
import { rangesOf, USUAL_RANGES } from '../../../shared/study/ranges.ts';
import type { Confidence } from '../../../shared/verdict/confidence/confidence.ts';
import { StudyStore } from '../../../src/studyState/studyStore.ts';

const WIDE = { ...USUAL_RANGES, payload: 0.3 };

it('ranges that are entered belong to the study: its file keeps them, undo takes them back, results stay', () => {
  const store = new StudyStore(DEFAULT_STUDY, PRESETS);
  const outcome = { moves: [] } as unknown as CandidateOutcome;
  store.setOutcome(0, outcome);
  store.setConfidence({ found: {} as Confidence });
  store.setRanges(WIDE);
  const { study, confidence, candidates } = store.state;
  expect(rangesOf(study)).toBe(WIDE);
  expect(confidence.found).toBeNull();
  expect(at(candidates, 0).outcome).toBe(outcome);
  expect(readStudy(writeStudy(study), PRESETS)).toMatchObject({ study: { ranges: WIDE } });
  store.setJob({ ...study.job, title: 'The same job' });
  expect(rangesOf(store.state.study)).toBe(WIDE);
  store.undo();
  store.undo();
  expect(rangesOf(store.state.study)).toBe(USUAL_RANGES);
});

it('a study that is opened is judged within its own ranges', () => {
  const store = new StudyStore(DEFAULT_STUDY, PRESETS);
  store.open({ ...DEFAULT_STUDY, ranges: WIDE });
  expect(rangesOf(store.state.study)).toBe(WIDE);
  expect(rangesOf(new StudyStore({ ...DEFAULT_STUDY, ranges: WIDE }, PRESETS).state.study)).toBe(WIDE);
});
