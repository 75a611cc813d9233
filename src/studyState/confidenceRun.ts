import { rangesOf } from '../../shared/study/ranges.ts';
import type { Counted } from '../../shared/verdict/confidence/confidence.ts';
import { CALCULATED } from '../../shared/verdict/confidence/findConfidence.ts';
import { ConfidenceClient } from '../clients/confidenceClient.ts';
import { errorText } from '../clients/errorText.ts';
import { sameResults } from './changes.ts';
import { judgedCandidates } from './simulatedCandidate.ts';
import type { ConfidenceState, StudyState } from './state.ts';
import type { StudyStore } from './studyStore.ts';

/** Jobs whose moves are simulated too, which takes a minute or two. */
const SIMULATED = 100;
/** For a report that is asked for before all are drawn. */
const ENOUGH = 200;

/** Works out with what probability the choice holds, in a worker. A study that changes under way is left. */
export class ConfidenceRun {
  readonly #store: StudyStore;
  readonly #client: Pick<ConfidenceClient, 'confidence' | 'cancel'>;
  /** The state that it is worked out for. */
  #asked: StudyState | null = null;

  constructor(
    store: StudyStore,
    client: Pick<ConfidenceClient, 'confidence' | 'cancel'> = new ConfidenceClient(),
  ) {
    this.#store = store;
    this.#client = client;
    store.subscribe((state) => {
      if (!this.#asked) return;
      const isSame = rangesOf(this.#asked.study) === rangesOf(state.study);
      if (!isSame || !sameResults(this.#asked, state)) this.cancel();
    });
  }

  /** By calculation, unless it is known, under way, or has failed. */
  async start(): Promise<void> {
    const { found, error } = this.#store.state.confidence;
    if (this.#asked || found || error !== null) return;
    await this.#run(0);
  }

  /** The moves of some of the jobs as well. */
  async simulate(): Promise<void> {
    this.cancel();
    const { found } = this.#store.state.confidence;
    const known = found && found.calculated.drawn === CALCULATED ? found.calculated : null;
    await this.#run(SIMULATED, known);
  }

  /** As soon as enough is known for a report: so many jobs, or it has ended. */
  enough(): Promise<void> {
    void this.start();
    return new Promise((resolve) => {
      const look = ({ confidence: { found, isRunning } }: StudyState): void => {
        if (isRunning && (found?.calculated.drawn ?? 0) < ENOUGH) return;
        unsubscribe();
        resolve();
      };
      const unsubscribe = this.#store.subscribe(look);
      look(this.#store.state);
    });
  }

  /** What has been found so far stays. */
  cancel(): void {
    if (!this.#asked) return;
    this.#asked = null;
    this.#client.cancel();
    this.#tell({ isRunning: false });
  }

  async #run(simulated: number, known: Counted | null = null): Promise<void> {
    const state = this.#store.state;
    this.#asked = state;
    const ranges = rangesOf(state.study);
    this.#tell({ isRunning: true, error: null });
    const isAsked = () => this.#asked === state;
    try {
      await this.#client.confidence(
        state.study.job,
        judgedCandidates(state),
        { ranges, calculated: CALCULATED, simulated, known },
        (found) => isAsked() && this.#tell({ found }),
      );
    } catch (error) {
      if (isAsked()) this.#tell({ error: errorText(error) });
    } finally {
      if (isAsked()) {
        this.#asked = null;
        this.#tell({ isRunning: false });
      }
    }
  }

  #tell(changes: Partial<ConfidenceState>): void {
    this.#store.setConfidence(changes);
  }
}
