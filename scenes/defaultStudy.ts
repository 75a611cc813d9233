import type { ParameterChanges } from '../shared/core/parameters/table.ts';
import { chooseCandidates } from '../shared/sizing/chooseCandidates.ts';
import type { Study } from '../shared/study/candidate.ts';
import { defaultJobValues, type Job } from '../shared/study/job.ts';
import { PRESETS } from './index.ts';
import gains from './simulated/defaultGains.json' with { type: 'json' };

const JOB: Job = {
  title: 'Shuttle a mould from the press to the measuring station',
  // What an example asks beside the moves; a job of one’s own asks only what its owner enters.
  values: { ...defaultJobValues(), rippleLimit: 0.001, growthLimit: 5e-6, wear: 3e-6 },
  moves: [],
};

/** What tuning found for each preset, beside its results in `simulated/`. */
const GAINS = gains as Readonly<Record<string, ParameterChanges>>;

/** The study that opens first: one drive of each kind on the mould shuttle, tuned. */
export const DEFAULT_STUDY: Study = {
  job: JOB,
  candidates: chooseCandidates(JOB, PRESETS).map((candidate) => ({
    ...candidate,
    gains: GAINS[candidate.preset] ?? null,
  })),
};
