import { chooseCandidates } from '../shared/sizing/chooseCandidates.ts';
import type { Study } from '../shared/study/candidate.ts';
import { defaultJobValues, type Job } from '../shared/study/job.ts';
import { PRESETS } from './index.ts';

const JOB: Job = {
  title: 'Shuttle a mould from the press to the measuring station',
  values: defaultJobValues(),
  moves: [],
};

/** The study that opens first: one drive of each kind on the mould shuttle. */
export const DEFAULT_STUDY: Study = { job: JOB, candidates: chooseCandidates(JOB, PRESETS) };
