import { errorText } from '../clients/errorText.ts';
import { VerdictClient } from '../clients/verdictClient.ts';
import { sameResults } from './changes.ts';
import { judgedCandidates } from './simulatedCandidate.ts';
import type { StudyState, VerdictState } from './state.ts';
import type { StudyStore } from './studyStore.ts';

/** Works out the verdict on a study in a worker, once for all that show it. A study that changes under way is judged anew. */
export class VerdictRun {
  readonly #store: StudyStore;
  readonly #client: Pick<VerdictClient, 'verdict' | 'cancel'>;
  /** The state that is being judged. */
  #judged: StudyState | null = null;

  constructor(store: StudyStore, client: Pick<VerdictClient, 'verdict' | 'cancel'> = new VerdictClient()) {
    this.#store = store;
    this.#client = client;
    store.subscribe((state) => {
      if (this.#judged && !sameResults(this.#judged, state)) this.#cancel();
    });
  }

  /** Works out the verdict on the study as it stands, unless it is known, under way, or has failed. */
  async start(): Promise<void> {
    const state = this.#store.state;
    if (this.#judged || state.verdict.flips || state.verdict.error !== null) return;
    this.#judged = state;
    const tell = (changes: Partial<VerdictState>) => {
      // What arrives late is of a study that is no more.
      if (this.#judged === state) this.#store.setVerdict(changes);
    };
    try {
      const flips = await this.#client.verdict(
        state.study.job,
        judgedCandidates(state),
        (judgement) => tell({ judgement }),
        (share) => tell({ share }),
      );
      if (flips) tell({ flips, share: 1 });
    } catch (error) {
      tell({ error: errorText(error) });
    } finally {
      if (this.#judged === state) this.#judged = null;
    }
  }

  /**
   * The study with the whole verdict on it, as soon as that is known.
   * @throws Error when it cannot be worked out
   */
  whole(): Promise<StudyState> {
    this.#store.setVerdict({ error: null });
    return new Promise((resolve, reject) => {
      const look = (state: StudyState): void => {
        const { judgement, flips, error } = state.verdict;
        if (error === null && !(judgement && flips)) {
          void this.start();
          return;
        }
        unsubscribe();
        if (error === null) resolve(state);
        else reject(new Error(error));
      };
      const unsubscribe = this.#store.subscribe(look);
      look(this.#store.state);
    });
  }

  #cancel(): void {
    this.#judged = null;
    this.#client.cancel();
  }
}
