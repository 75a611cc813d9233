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

it('what was found of an axis is known under another job that leaves the axis as it is, and no longer once it is another', () => {
  const store = new StudyStore(DEFAULT_STUDY, PRESETS);
  const outcome = { moves: [] } as unknown as CandidateOutcome;
  const { job } = store.state.study;
  expect(store.knownOf(0)).toBeNull();
  store.setOutcome(0, outcome);
  const set = (values: Partial<typeof job.values>) =>
    store.setJob({ ...job, values: { ...job.values, ...values } });
  set({ wear: job.values.wear + 1e-6 });
  expect(at(store.state.candidates, 0).outcome).toBeNull();
  expect(store.knownOf(0)).toMatchObject({ job, outcome });
  expect(store.knownOf(1)).toBeNull();
  set({ payload: job.values.payload + 1 });
  expect(store.knownOf(0)).toBeNull();
});

it('a value that is typed back brings back what was tuned and simulated, of the drives that were there', () => {
  const store = new StudyStore(DEFAULT_STUDY, PRESETS);
  const outcome = { moves: [] } as unknown as CandidateOutcome;
  store.setOutcome(0, outcome);
  const { job, candidates } = store.state.study;
  const carry = (payload: number) => store.setJob({ ...job, values: { ...job.values, payload } });
  carry(job.values.payload + 1);
  expect(at(store.state.candidates, 0).choice.gains).toBeNull();
  store.setGains(0, { Kp: 1e6 });
  carry(job.values.payload);
  expect(at(store.state.candidates, 0).choice.gains).toEqual(at(candidates, 0).gains);
  expect(at(store.state.candidates, 0).outcome).toBe(outcome);
  carry(job.values.payload + 1);
  expect(at(store.state.candidates, 0).choice.gains).toEqual({ Kp: 1e6 });
  // Another limit of the peak sensitivity is another task.
  const { values } = job;
  store.setJob({ ...job, values: { ...values, peakSensitivity: values.peakSensitivity + 0.1 } });
  expect(at(store.state.candidates, 0).choice.gains).toBeNull();
});
