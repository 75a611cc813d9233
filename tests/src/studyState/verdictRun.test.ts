import { afterEach, describe, expect, it } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { setUnitSystem } from '../../../shared/core/unitSystem.ts';
import type { Flips, Judgement } from '../../../shared/verdict/judgement.ts';
import { judge } from '../../../shared/verdict/verdict.ts';
import type { VerdictClient } from '../../../src/clients/verdictClient.ts';
import { NO_VERDICT } from '../../../src/studyState/state.ts';
import { StudyStore } from '../../../src/studyState/studyStore.ts';
import { VerdictRun } from '../../../src/studyState/verdictRun.ts';
import { recordedCandidates, recordedJob } from '../../shared/study/recordedStudy.ts';

const FLIPS: Flips = { flips: [], flipNote: 'Nothing was varied.', purchases: [], robustness: '' };

/** A worker whose answers come when a test wants them. */
class Client implements Pick<VerdictClient, 'verdict' | 'cancel'> {
  readonly asked: {
    readonly letters: string;
    readonly onJudgement: (judgement: Judgement) => void;
    readonly answer: (flips: Flips | null) => void;
    readonly fail: (error: Error) => void;
  }[] = [];

  verdict(...[job, candidates, onJudgement]: Parameters<VerdictClient['verdict']>): Promise<Flips | null> {
    return new Promise((answer, fail) => {
      const letters = candidates.map(({ letter }) => letter).join('');
      this.asked.push({ letters, onJudgement, answer, fail });
      onJudgement(judge(job, candidates));
    });
  }

  cancel(): void {
    this.asked.at(-1)?.answer(null);
  }
}

function setUp() {
  const candidates = recordedCandidates();
  const study = { job: recordedJob(), candidates: candidates.map(({ choice }) => choice) };
  const store = new StudyStore(study, PRESETS);
  const client = new Client();
  const run = new VerdictRun(store, client);
  const setOutcome = (place: number) => {
    const candidate = candidates[place];
    if (candidate) store.setOutcome(place, candidate.outcome);
  };
  setOutcome(0);
  setOutcome(1);
  return { store, client, run, setOutcome };
}

const settled = () => new Promise((resolve) => setTimeout(resolve));

afterEach(() => setUnitSystem('metric'));

describe('the verdict on a study', () => {
  it('is worked out once, whoever asks for it, from the candidates that have been simulated', async () => {
    const { store, client, run } = setUp();
    void run.start();
    void run.start();
    const whole = run.whole();
    expect(client.asked.map(({ letters }) => letters)).toEqual(['AB']);
    expect(store.state.verdict.judgement?.choice).toMatch(/^Take A/);
    client.asked[0]?.answer(FLIPS);
    expect((await whole).verdict).toMatchObject({ flips: FLIPS, share: 1, error: null });
    void run.start();
    expect(client.asked).toHaveLength(1);
  });

  it('is judged anew when a result comes under way, and waited for', async () => {
    const { client, run, setOutcome } = setUp();
    const whole = run.whole();
    setOutcome(2);
    client.asked[0]?.answer(FLIPS);
    await settled();
    expect(client.asked.map(({ letters }) => letters)).toEqual(['AB', 'ABC']);
    client.asked[1]?.answer(FLIPS);
    expect((await whole).candidates.filter(({ outcome }) => outcome !== null)).toHaveLength(3);
  });

  it('is forgotten with another job and worded anew in other units, not with more progress', async () => {
    const { store, client, run } = setUp();
    void run.start();
    client.asked[0]?.answer(FLIPS);
    await settled();
    store.setProgress(new Map([[2, { stage: 'Moves', share: 0.5 }]]));
    expect(store.state.verdict.flips).toBe(FLIPS);
    store.setUnits('inch');
    expect(store.state.verdict).toEqual(NO_VERDICT);
    void run.start();
    expect(store.state.verdict.judgement?.fairness).toMatch(/ lb\./);
    client.asked[1]?.answer(FLIPS);
    await settled();
    store.setJob(recordedJob({ rippleLimit: 0.01 }));
    expect(store.state.verdict).toEqual(NO_VERDICT);
  });

  it('that cannot be worked out says why, and is tried again only when it is needed', async () => {
    const { store, client, run } = setUp();
    const whole = run.whole();
    client.asked[0]?.fail(new Error('The verdict stopped.'));
    await expect(whole).rejects.toThrow('The verdict stopped.');
    expect(store.state.verdict.error).toBe('The verdict stopped.');
    void run.start();
    expect(client.asked).toHaveLength(1);
    void run.whole();
    expect(client.asked).toHaveLength(2);
  });
});
