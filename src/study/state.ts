import type { Scene } from '../../shared/scene.ts';
import type { Sizing } from '../../shared/sizing/sizing.ts';
import type { Job, JobValues } from '../../shared/study/job.ts';
import type { LaneChoice, Study } from '../../shared/study/lane.ts';
import type { LaneOutcome, LaneProgress } from '../../shared/study/outcome.ts';
import type { UnitSystem } from '../../shared/units.ts';

export type { UnitSystem };

/** A lane as it stands: what it is, what can be calculated of it, and what simulation has found so far. */
export interface LaneState {
  /** 'A', 'B', ... */
  readonly letter: string;
  readonly choice: LaneChoice;
  readonly title: string;
  readonly scene: Scene;
  readonly sizing: Sizing;
  /** Null until it has been simulated as it now stands. */
  readonly outcome: LaneOutcome | null;
  /** While it is simulated. */
  readonly progress: LaneProgress | null;
  /** Why it could not be simulated, in plain words. */
  readonly trouble: string | null;
}

export interface StudyState {
  readonly study: Study;
  readonly units: UnitSystem;
  readonly lanes: readonly LaneState[];
  /** Lanes are being tuned and simulated. */
  readonly isRunning: boolean;
}

/** What a person can do to a study. Each answers with what is wrong, in words, or null. */
export interface StudyActions {
  changeJob(changes: Partial<JobValues>): string | null;
  nameJob(title: string): string | null;
  useMoves(moves: Job['moves']): string | null;
  setUnits(units: UnitSystem): void;
  /** Puts a drive in a lane, or adds one at the end; null takes the lane out. */
  setLane(index: number, choice: Omit<LaneChoice, 'gains'> | null): string | null;
  /** One drive of each kind, all of the smallest class of continuous force that does the job. */
  chooseLanes(): void;
  /** Pretunes and simulates every lane that has no outcome. */
  simulate(): void;
  cancel(): void;
  /** Leaves the study and puts the axis of a lane on the bench. */
  openOnBench(index: number): void;
}

/** A part of the study that is shown at a time. */
export interface Pane {
  readonly element: HTMLElement;
  show(state: StudyState): void;
  /** It comes to sight or goes out of it; whatever moves rests while it is out of sight. */
  setShown?(shown: boolean): void;
}
