import type { Scene } from '../scene.ts';
import type { Sizing } from '../sizing/sizing.ts';
import type { Unit } from '../units.ts';
import type { Job } from './job.ts';
import type { LaneOutcome } from './outcome.ts';

/** A lane with all that is known of it. */
export interface JudgedLane {
  /** 'A', 'B', ... */
  readonly letter: string;
  readonly title: string;
  readonly scene: Scene;
  readonly sizing: Sizing;
  readonly outcome: LaneOutcome;
}

export interface VerdictCell {
  /** SI; null where the lane has no such figure. */
  readonly value: number | null;
  readonly text: string;
  /** The best of the row alone, or as good as it. */
  readonly mark: 'best' | 'tie' | null;
  /** Does not keep what the job asks. */
  readonly fails: boolean;
}

export interface VerdictRow {
  readonly id: string;
  readonly label: string;
  readonly unit: Unit;
  readonly better: 'less' | 'more';
  readonly definition: string;
  /** What the job asks for, in words; null where it asks nothing. */
  readonly asked: string | null;
  /** In the order of the lanes. */
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

export interface Verdict {
  readonly rows: readonly VerdictRow[];
  /** Places of the lanes that do all that is asked, the best first. */
  readonly ranking: readonly number[];
  /** What is chosen and why, or why none; then what stands out between the lanes. Plain sentences, computed from the figures. */
  readonly choice: string;
  readonly sentences: readonly string[];
  readonly flips: readonly Flip[];
}
