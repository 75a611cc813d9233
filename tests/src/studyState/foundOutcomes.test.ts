import { expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import type { CandidateOutcome } from '../../../shared/study/outcome.ts';
import { StudyStore } from '../../../src/studyState/studyStore.ts';

it('a change that is undone brings back what was simulated', () => {
  const store = new StudyStore(DEFAULT_STUDY, PRESETS);
  const outcome = { moves: [] } as unknown as CandidateOutcome;
  store.setOutcome(0, outcome);
  const { job, candidates } = store.state.study;
  store.setJob({ ...job, values: { ...job.values, payload: job.values.payload + 1 } });
  expect(at(store.state.candidates, 0).outcome).toBeNull();
  store.undo();
  expect(at(store.state.candidates, 0).outcome).toBe(outcome);
  store.setCandidates(candidates.slice(1));
  store.undo();
  expect(at(store.state.candidates, 0).outcome).toBe(outcome);
});
