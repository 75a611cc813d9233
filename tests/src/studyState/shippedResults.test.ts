import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { DEFAULT_STUDY } from '../../../scenes/defaultStudy.ts';
import { PRESETS } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { defaultJobValues } from '../../../shared/study/job.ts';
import { lookForOutcomes } from '../../../src/studyState/outcomeSearch.ts';
import { findShipped, type SimulatedStudy } from '../../../src/studyState/shippedResults.ts';
import { StudyStore } from '../../../src/studyState/studyStore.ts';

const simulated = JSON.parse(
  readFileSync(new URL('../../../scenes/simulated/defaultStudy.json', import.meta.url), 'utf8'),
) as SimulatedStudy;

/** Resolves once nothing is looked for any more. */
function searched(store: StudyStore): Promise<void> {
  const isSearching = () => store.state.candidates.some(({ isSought }) => isSought);
  return expect.poll(isSearching, { interval: 1 }).toBe(false);
}

/** A store with what loading gave; `asked` counts how often. */
async function opened(study = DEFAULT_STUDY) {
  const store = new StudyStore(study, PRESETS);
  let asked = 0;
  const load = () => {
    asked++;
    return Promise.resolve(simulated);
  };
  lookForOutcomes(store, [findShipped(load), () => Promise.reject(new Error('There is no database.'))]);
  expect(store.state.candidates.every(({ isSought }) => isSought)).toBe(true);
  await searched(store);
  return { store, asked: () => asked };
}

describe('the example', () => {
  it('is the study that was simulated: the same job, the same drives with the same gains', () => {
    const { job } = simulated;
    expect({ ...job, values: { ...defaultJobValues(), ...job.values } }).toEqual(DEFAULT_STUDY.job);
    expect(simulated.candidates.map(({ choice }) => choice)).toEqual(DEFAULT_STUDY.candidates);
  });

  it('opens with its results, loaded once', async () => {
    const { store, asked } = await opened();
    expect(store.state.candidates.map(({ outcome }) => outcome)).toEqual(
      simulated.candidates.map(({ outcome }) => outcome),
    );
    expect(asked()).toBe(1);
  });

  it('tells of the search and of what it found once each, since each telling is drawn', async () => {
    const store = new StudyStore(DEFAULT_STUDY, PRESETS);
    let told = 0;
    store.subscribe(() => void told++);
    lookForOutcomes(store, [findShipped(() => Promise.resolve(simulated))]);
    await searched(store);
    expect(told).toBe(2);
  });

  it('has none once its job or a drive is another, and has them back by undo', async () => {
    const { store } = await opened();
    const { job } = DEFAULT_STUDY;
    store.setJob({ ...job, values: { ...job.values, payload: 6 } });
    expect(store.state.candidates.every(({ outcome }) => outcome === null)).toBe(true);
    store.undo();
    await searched(store);
    expect(store.state.candidates.every(({ outcome }) => outcome !== null)).toBe(true);
  });

  it('lends no results to a job with other tests', async () => {
    const { job, candidates } = DEFAULT_STUDY;
    const longer = { job: { ...job, values: { ...job.values, dailyTime: 3600 } }, candidates };
    const { store } = await opened(longer);
    expect(at(store.state.candidates, 0).outcome).toBeNull();
  });
});
