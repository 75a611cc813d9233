import type { Ranges } from '../../study/ranges.ts';
import type { Estimate } from '../../tolerance/summary.ts';

/** How the job may turn out, and how often it did. */
export interface Way {
  /** Letters of those that then come first; none: no drive does the job. */
  readonly letters: readonly string[];
  /** The choice is what it is without any of it. */
  readonly stays: boolean;
  readonly count: number;
  /** With its 95 % confidence interval. */
  readonly share: Estimate;
  /** What most often puts the choice behind or out, as a clause; null where it stays. */
  readonly reason: string | null;
}

/** What became of the choice in the jobs that were drawn. */
export interface Counted {
  readonly drawn: number;
  /** That the choice stays first, alone or not. */
  readonly stays: Estimate;
  /** The most frequent first. */
  readonly ways: readonly Way[];
}

/** With what probability a choice holds. */
export interface Confidence {
  readonly ranges: Ranges;
  /** With settling as it was simulated for the job as stated. */
  readonly calculated: Counted;
  /** The first of the same jobs with their moves simulated as well; null: not asked for. */
  readonly simulated: Counted | null;
  /** How many there are to be of each. */
  readonly asked: { readonly calculated: number; readonly simulated: number };
}
