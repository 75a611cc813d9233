import type { Job } from '../../shared/study/job.ts';
import { DECISION_ENTRIES } from '../../shared/study/jobRows.ts';
import type { CandidateOutcome } from '../../shared/study/outcome.ts';
import { MODEL_BUILD } from '../clients/candidateClient.ts';
import { askTable, keepNewest, type Table } from '../ui/database.ts';
import { type Find, wasFound } from './outcomeSearch.ts';
import type { CandidateState } from './state.ts';
import type { StudyStore } from './studyStore.ts';

const RESULTS: Table = { database: 'waybench results', version: 1, table: 'outcomes', index: 'kept' };
/** Outcomes that are kept: two dozen studies of four drives. The oldest go first. */
const MOST = 96;

interface Kept {
  readonly outcome: CandidateOutcome;
  /** When, ms. */
  readonly kept: number;
}

/** Files of a server under development keep their names when they change. */
const IS_KEPT = !/\.ts\b/.test(MODEL_BUILD);

/**
 * Keeps what simulation found of each candidate in the browser's database, under all that it depends on. It works without: then everything
 * is simulated anew.
 */
export function keepResults(store: StudyStore): void {
  if (!IS_KEPT) return;
  const kept = new WeakSet<CandidateOutcome>();
  store.subscribe(({ study, candidates }) => {
    for (const candidate of candidates) {
      const { outcome } = candidate;
      if (outcome === null || kept.has(outcome) || wasFound(outcome)) continue;
      kept.add(outcome);
      void keep(keyOf(study.job, candidate), outcome).catch(() => {});
    }
  });
}

/** What was kept of a candidate, also by a study that was closed since. */
export const findKept: Find = async (job, candidate) => {
  if (!IS_KEPT) return null;
  const key = keyOf(job, candidate);
  const found = await askTable<Kept | undefined>(RESULTS, 'readonly', (table) => table.get(key));
  return found?.outcome ?? null;
};

/** All that an outcome depends on: the job, the axis with its gains, and the build of the model. */
function keyOf({ values, moves }: Job, { scene }: CandidateState): string {
  const simulated = Object.entries(values).filter(([name]) => !DECISION_ENTRIES.includes(name));
  return JSON.stringify([MODEL_BUILD, simulated, moves, scene.driveType, scene.parameters, scene.moves]);
}

async function keep(key: string, outcome: CandidateOutcome): Promise<void> {
  const kept: Kept = { outcome, kept: Date.now() };
  await askTable(RESULTS, 'readwrite', (table) => table.put(kept, key));
  await keepNewest(RESULTS, MOST);
}
