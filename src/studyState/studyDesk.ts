import { type Problem, problemText } from '../../shared/core/problem.ts';
import type { Presets, Scene } from '../../shared/core/scene.ts';
import { onPage } from '../../shared/core/sentence.ts';
import { chooseCandidates } from '../../shared/sizing/chooseCandidates.ts';
import type { CandidateChoice } from '../../shared/study/candidate.ts';
import { checkCandidate, ofCandidate } from '../../shared/study/checkCandidate.ts';
import { checkJob } from '../../shared/study/checkJob.ts';
import type { Job, JobValues } from '../../shared/study/job.ts';
import type { Ranges } from '../../shared/study/ranges.ts';
import type { ConfidenceRun } from './confidenceRun.ts';
import type { StudyActions, UnitSystem } from './state.ts';
import type { StudyRun } from './studyRun.ts';
import type { StudyStore } from './studyStore.ts';
import type { VerdictRun } from './verdictRun.ts';

/** What a person can do to a study, each checked before it reaches the store. */
export class StudyDesk implements StudyActions {
  readonly #store: StudyStore;
  readonly #run: StudyRun;
  readonly #verdict: VerdictRun;
  readonly #confidence: ConfidenceRun;
  readonly #presets: Presets;
  readonly #openOnBench: (scene: Scene) => void;

  constructor(
    store: StudyStore,
    run: StudyRun,
    verdict: VerdictRun,
    confidence: ConfidenceRun,
    presets: Presets,
    openOnBench: (scene: Scene) => void,
  ) {
    this.#store = store;
    this.#run = run;
    this.#verdict = verdict;
    this.#confidence = confidence;
    this.#presets = presets;
    this.#openOnBench = openOnBench;
  }

  changeJob(changes: Partial<JobValues>): string | null {
    return this.#propose((job) => ({ ...job, values: { ...job.values, ...changes } }));
  }

  nameJob(title: string): string | null {
    return this.#propose((job) => ({ ...job, title }));
  }

  useMoves(moves: Job['moves']): string | null {
    return this.#propose((job) => ({ ...job, moves, values: { ...job.values, motion: 'move list' } }));
  }

  setUnits(units: UnitSystem): void {
    this.#store.setUnits(units);
  }

  setRefused(labels: readonly string[]): void {
    this.#store.setRefused(labels);
  }

  setCandidate(index: number, choice: Omit<CandidateChoice, 'gains'> | null): string | null {
    const { job, candidates } = this.#store.state.study;
    if (choice === null) {
      this.#store.setCandidates(candidates.filter((_, k) => k !== index));
      return null;
    }
    const checked = checkCandidate(choice, job, this.#presets);
    if ('problems' in checked) return this.#worded(checked.problems);
    const before = candidates[index];
    // A price changes nothing that was tuned.
    const isSame = before !== undefined && driveOf(before) === driveOf(checked.candidate);
    this.#store.setCandidates([
      ...candidates.slice(0, index),
      isSame ? { ...checked.candidate, gains: before.gains } : checked.candidate,
      ...candidates.slice(index + 1),
    ]);
    return null;
  }

  chooseCandidates(): void {
    this.#store.setCandidates(chooseCandidates(this.#store.state.study.job, this.#presets));
  }

  simulate(): void {
    if (this.#store.state.refused.length === 0) void this.#run.start();
  }

  judge(): void {
    void this.#verdict.start();
  }

  confide(): void {
    void this.#confidence.start();
  }

  useRanges(ranges: Ranges): void {
    this.#store.setRanges(ranges);
    void this.#confidence.start();
  }

  simulateDraws(): void {
    void this.#confidence.simulate();
  }

  stopDraws(): void {
    this.#confidence.cancel();
  }

  cancel(): void {
    this.#run.cancel();
    this.#store.setReportDue(false);
  }

  openOnBench(index: number): void {
    const candidate = this.#store.state.candidates[index];
    if (candidate) this.#openOnBench(candidate.scene);
  }

  #propose(change: (job: Job) => Job): string | null {
    const { study } = this.#store.state;
    const { job, problems } = checkJob(change(study.job));
    if (!job) return this.#worded(problems);
    // An own datasheet may leave a drive less room than its preset has.
    for (const [index, candidate] of study.candidates.entries()) {
      const checked = checkCandidate({ ...candidate, gains: null }, job, this.#presets);
      if ('problems' in checked)
        return this.#worded(checked.problems.map((problem) => ofCandidate(index, problem)));
    }
    this.#store.setJob(job);
    return null;
  }

  /** The first of some problems, in the units of the study. */
  #worded([problem]: readonly Problem[]): string | null {
    return problem ? problemText(problem, onPage(this.#store.state.units)) : null;
  }
}

/** All that tuning and simulation of a candidate depend on. */
function driveOf({ preset, motorCount, own, parts }: CandidateChoice): string {
  return JSON.stringify([preset, motorCount, own, parts ?? {}]);
}
