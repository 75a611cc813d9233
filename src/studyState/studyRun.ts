import { PRESETS } from '../../scenes/index.ts';
import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { CandidateProgress } from '../../shared/study/outcome.ts';
import { untunedGains } from '../../shared/study/untunedGains.ts';
import { CandidateClient, candidatePool } from '../clients/candidateClient.ts';
import { errorText } from '../clients/errorText.ts';
import { PretuneClient } from '../clients/pretuneClient.ts';
import { WorkerFailure } from '../clients/workerHost.ts';
import { NumberClock, TOLD } from '../ui/timing/numberClock.ts';
import type { StudyStore } from './studyStore.ts';

/** What a candidate is being tuned or simulated by. */
interface Work {
  readonly index: number;
  readonly scene: Scene;
  readonly client: { cancel(): void };
}

/**
 * Tunes and simulates the candidates of a study until none is left that has not been; one that the sizing rules out is not tuned. Tuning takes all cores for one candidate after the other;
 * candidates that are tuned are simulated meanwhile, each by two workers that take the next one after it. A candidate that changes under way is dropped and taken up anew.
 */
export class StudyRun {
  readonly #store: StudyStore;
  readonly #underWay = new Set<Work>();
  readonly #pacing = new NumberClock(TOLD);
  /** How far each has come that has been heard of since the last telling. */
  readonly #heard = new Map<Work, CandidateProgress>();
  #isCancelled = false;
  #isKept = false;
  /** Their workers stay from one candidate to the next. */
  readonly #pretuning = new PretuneClient();
  readonly #simulating = candidatePool();

  constructor(store: StudyStore) {
    this.#store = store;
    store.subscribe(() => this.#dropChanged());
  }

  cancel(): void {
    this.#isCancelled = true;
    for (const { client } of this.#underWay) client.cancel();
  }

  async start(): Promise<void> {
    if (this.#store.state.isRunning) return;
    this.#isCancelled = false;
    this.#store.startRun();
    const simulations = new Set<Promise<void>>();
    while (!this.#isCancelled) {
      const index = this.#nextCandidate();
      if (index >= 0) {
        if (!(await this.#tune(index)) || this.#isCancelled) continue;
        const simulation = this.#simulate(index).finally(() => simulations.delete(simulation));
        simulations.add(simulation);
      } else if (simulations.size > 0) await Promise.race(simulations);
      else break;
    }
    await Promise.all(simulations);
    this.#store.endRun();
    this.#dismiss();
  }

  /** Whether the workers stay after a run, for a next that is to come: theirs is the time that it takes to compile their code. */
  keepWorkers(isKept: boolean): void {
    this.#isKept = isKept;
    this.#dismiss();
  }

  #dismiss(): void {
    if (this.#isKept || this.#store.state.isRunning) return;
    this.#pretuning.cancel();
    this.#simulating.end();
  }

  /** A candidate of which nothing is known and on which no one works, or −1. */
  #nextCandidate(): number {
    const busy = [...this.#underWay].map(({ index }) => index);
    return this.#store.state.candidates.findIndex(
      ({ outcome, error }, index) => outcome === null && error === null && !busy.includes(index),
    );
  }

  /** Returns whether the candidate has gains then. */
  async #tune(index: number): Promise<boolean> {
    const { choice, scene, sizing } = at(this.#store.state.candidates, index);
    if (choice.gains) return true;
    const untuned = () => untunedGains(scene, choice, PRESETS);
    if (!sizing.passes) {
      this.#store.setGains(index, untuned());
      return true;
    }
    const limit = this.#store.state.study.job.values.peakSensitivity;
    const client = this.#pretuning;
    const work = { index, scene, client };
    const gains = await this.#watched(work, async () => {
      try {
        const best = await client.tune(scene, { kind: 'peak sensitivity', limit }, ({ stage, done, total }) =>
          this.#tell(work, { stage, share: done / Math.max(total, 1) }),
        );
        return best?.changes ?? null;
      } catch (error) {
        // No tuning does the job with this drive: how it fails shows in its simulation.
        if (error instanceof WorkerFailure) throw error;
        return untuned();
      }
    });
    if (!gains) return false;
    this.#store.setGains(index, gains);
    return true;
  }

  async #simulate(index: number): Promise<void> {
    const { scene } = at(this.#store.state.candidates, index);
    const { job } = this.#store.state.study;
    const client = new CandidateClient(this.#simulating);
    const work = { index, scene, client };
    const outcome = await this.#watched(work, () =>
      client.evaluate(job, scene, (progress) => this.#tell(work, progress), this.#store.knownOf(index)),
    );
    if (outcome) this.#store.setOutcome(index, outcome);
  }

  /** All at one moment, since each telling is drawn. Progress may arrive after what it led to. */
  #tell(work: Work, progress: CandidateProgress): void {
    this.#heard.set(work, progress);
    if (!this.#pacing.isDue()) return;
    const told = [...this.#heard].filter(
      ([each]) => this.#underWay.has(each) && this.#isStill(each.index, each.scene),
    );
    this.#heard.clear();
    this.#store.setProgress(new Map(told.map(([{ index }, heard]) => [index, heard])));
  }

  /** What is found for a candidate, or null: it was cancelled, or the candidate is another by now, or it went wrong, which is told. */
  async #watched<T>(work: Work, find: () => Promise<T | null>): Promise<T | null> {
    const { index, scene } = work;
    this.#underWay.add(work);
    try {
      const found = await find();
      return this.#isStill(index, scene) ? found : null;
    } catch (error) {
      if (this.#isStill(index, scene)) this.#store.setError(index, errorText(error));
      return null;
    } finally {
      this.#underWay.delete(work);
    }
  }

  #dropChanged(): void {
    for (const { index, scene, client } of this.#underWay) if (!this.#isStill(index, scene)) client.cancel();
  }

  #isStill(index: number, scene: Scene): boolean {
    return this.#store.state.candidates[index]?.scene === scene;
  }
}
