import type { CurrentUnit } from '../core/currentUnit.ts';
import type { Scene } from '../core/scene.ts';
import type { UnitSystem } from '../core/unitSystem.ts';
import type { Unit } from '../core/units.ts';
import type { Sizing } from '../sizing/sizing.ts';
import type { CandidateChoice } from '../study/candidate.ts';
import type { Job } from '../study/job.ts';
import type { CandidateOutcome } from '../study/outcome.ts';

/** A candidate with all that is known of it. */
export interface JudgedCandidate {
  /** 'A', 'B', ... */
  readonly letter: string;
  readonly title: string;
  readonly choice: CandidateChoice;
  readonly scene: Scene;
  readonly sizing: Sizing;
  readonly outcome: CandidateOutcome;
}

export interface VerdictCell {
  /** SI; null where the candidate has no such figure. */
  readonly value: number | null;
  readonly text: string;
  /** What the figure comes from, where the simulation says so: 'cogging, every 24.0 mm'. */
  readonly cause: string | null;
  /** The best of the row alone, or joint best. */
  readonly mark: 'best' | 'tie' | null;
  /** Does not keep what the job asks, and why. */
  readonly fails: boolean;
  readonly reason: string | null;
}

export const VERDICT_GROUPS = {
  throughput: 'Throughput',
  accuracy: 'Accuracy',
  smoothness: 'Smoothness',
  heat: 'Heat',
  energy: 'Energy',
  cost: 'Cost',
} as const;

export type VerdictGroup = keyof typeof VERDICT_GROUPS;

export interface VerdictRow {
  readonly id: string;
  readonly group: VerdictGroup;
  readonly label: string;
  readonly unit: Unit;
  readonly better: 'less' | 'more';
  readonly definition: string;
  /** What the job asks for, in words; null where it asks nothing. */
  readonly asked: string | null;
  /** The largest that the job allows, for whoever reads it in other units; absent where it allows any. SI. */
  readonly limit?: number | undefined;
  /** In the order of the candidates. */
  readonly cells: readonly VerdictCell[];
}

/** A change of one input of the job that changes the choice. */
export interface Flip {
  /** Entry of the job. */
  readonly input: keyof Job['values'];
  readonly from: number;
  readonly to: number;
  readonly sentence: string;
}

/** The changes of single inputs that would change the choice. */
export interface Flips {
  /** The nearest first. */
  readonly flips: readonly Flip[];
  /** What was varied to find them, and what was held. */
  readonly flipNote: string;
  /** What could be bought so that a drive which falls short does the job. */
  readonly purchases: readonly string[];
  /** Whether the choice holds when inputs are worse than stated; empty without a choice. */
  readonly robustness: string;
}

/** The table, the choice, and what stands out. */
export interface Judgement {
  readonly rows: readonly VerdictRow[];
  /** Places of the candidates that do all that is asked, the best first. */
  readonly ranking: readonly number[];
  /** Places that share first place: one, several that nothing tells apart, or none. */
  readonly first: readonly number[];
  /** What each candidate falls short of, in plain words; empty for one that does all that is asked. */
  readonly shortfalls: readonly (readonly string[])[];
  /** What is chosen and why, or why none; then what stands out between the candidates. Plain sentences, computed from the figures. */
  readonly choice: string;
  /** How the choice was made, and why the comparison is a fair one. */
  readonly rule: string;
  readonly fairness: string;
  readonly sentences: readonly string[];
}

export interface Verdict extends Judgement, Flips {}

/** In which units the sentences are worded. */
interface ReaderUnits {
  readonly system: UnitSystem;
  readonly current: CurrentUnit;
}

/** The command of a verdict worker. */
export interface VerdictCommands {
  /**
   * Keeps the worker busy until it is through; `onJudgement` hears the judgement first, since the search for flips takes hundreds of
   * sizings. The answer, which may overtake what is told, has it too.
   */
  verdict(
    job: Job,
    candidates: readonly JudgedCandidate[],
    units: ReaderUnits,
    onJudgement: (judgement: Judgement) => void,
    onProgress: (share: number) => void,
  ): { readonly judgement: Judgement; readonly flips: Flips };
}
