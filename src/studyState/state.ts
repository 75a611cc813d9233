import type { Scene } from '../../shared/core/scene.ts';
import type { UnitSystem } from '../../shared/core/unitSystem.ts';
import type { Sizing } from '../../shared/sizing/sizing.ts';
import type { CandidateChoice, Study } from '../../shared/study/candidate.ts';
import type { Job, JobValues } from '../../shared/study/job.ts';
import type { CandidateOutcome, CandidateProgress } from '../../shared/study/outcome.ts';
import type { Ranges } from '../../shared/study/ranges.ts';
import type { Confidence } from '../../shared/verdict/confidence/confidence.ts';
import type { Flips, Judgement } from '../../shared/verdict/judgement.ts';

export type { UnitSystem };

/** A candidate as it stands: what it is, what can be calculated of it, and what simulation has found so far. */
export interface CandidateState {
  /** 'A', 'B', ... */
  readonly letter: string;
  readonly choice: CandidateChoice;
  readonly title: string;
  readonly scene: Scene;
  readonly sizing: Sizing;
  /** Null until it has been simulated as it now stands. */
  readonly outcome: CandidateOutcome | null;
  /** What was found of it earlier is being looked for. */
  readonly isSought: boolean;
  /** While it is simulated. */
  readonly progress: CandidateProgress | null;
  /** Why it could not be simulated, in plain words. */
  readonly error: string | null;
}

/** The verdict on the candidates that have been simulated, as far as it has been worked out. */
export interface VerdictState {
  readonly judgement: Judgement | null;
  readonly flips: Flips | null;
  /** How much of the search for flips is done, 0 to 1. */
  readonly share: number;
  /** Why it could not be worked out, in plain words. */
  readonly error: string | null;
}

export const NO_VERDICT: VerdictState = { judgement: null, flips: null, share: 0, error: null };

/** With what probability the choice holds, as far as it has been worked out. */
export interface ConfidenceState {
  readonly found: Confidence | null;
  readonly isRunning: boolean;
  /** Why it could not be worked out, in plain words. */
  readonly error: string | null;
}

export const NO_CONFIDENCE: ConfidenceState = {
  found: null,
  isRunning: false,
  error: null,
};

export interface StudyState {
  readonly study: Study;
  readonly units: UnitSystem;
  readonly candidates: readonly CandidateState[];
  /** Labels of the entries of the job that hold something refused: everything else shows the job as it was before. */
  readonly refused: readonly string[];
  /** Candidates are being tuned and simulated. */
  readonly isRunning: boolean;
  /** When they began to be, ms, and the share that was done then; null while none is. */
  readonly begun: { readonly at: number; readonly done: number } | null;
  /** Of job and candidates as they now stand. */
  readonly verdict: VerdictState;
  readonly confidence: ConfidenceState;
  /** The report opens as soon as the verdict is known. */
  readonly isReportDue: boolean;
}

/** What a person can do to a study. Each answers with what is wrong, in words, or null. */
export interface StudyActions {
  changeJob(changes: Partial<JobValues>): string | null;
  nameJob(title: string): string | null;
  useMoves(moves: Job['moves']): string | null;
  setUnits(units: UnitSystem): void;
  /** The entries that hold something refused, by their labels. */
  setRefused(labels: readonly string[]): void;
  /** Puts a drive in a candidate, or adds one at the end; null takes the candidate out. */
  setCandidate(index: number, choice: Omit<CandidateChoice, 'gains'> | null): string | null;
  /** One drive of each kind, all of the smallest class of continuous force that does the job. */
  chooseCandidates(): void;
  /** Pretunes and simulates every candidate that has no outcome. */
  simulate(): void;
  /** Works out the verdict, unless it is known or under way. */
  judge(): void;
  /** Works out with what probability the choice holds, unless it is known or under way. */
  confide(): void;
  /** The same within other ranges. */
  useRanges(ranges: Ranges): void;
  /** Simulates the moves of some of the jobs that were drawn, too. */
  simulateDraws(): void;
  /** Draws no more; what was found stays. */
  stopDraws(): void;
  /** Ends tuning and simulation, and the wait for a report. */
  cancel(): void;
  /** Leaves the study and puts the axis of a candidate on the bench. */
  openOnBench(index: number): void;
}

/** A part of the study that is shown at a time. */
export interface Pane {
  readonly element: HTMLElement;
  show(state: StudyState): void;
  /** It comes to sight or goes out of it; whatever moves rests while it is out of sight. */
  setShown?(shown: boolean): void;
}
