import { linear, type RowValue } from '../core/parameters/row.ts';
import type { ParameterChanges, ParameterName } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import type { Trip } from './axis.ts';

/** What automatic pretuning is after. Peak sensitivity is the largest |S| over all frequencies, standing and sliding. */
export type PretuneGoal =
  /** The fastest loop whose peak sensitivity stays within the limit. */
  | { readonly kind: 'peak sensitivity'; readonly limit: number }
  /** The fastest loop with at least this phase margin (rad) and gain margin (factor). */
  | { readonly kind: 'margins'; readonly phase: number; readonly gain: number }
  /** Fastest settling into ± `window` (m), at no more than this peak sensitivity. */
  | { readonly kind: 'settling'; readonly window: number; readonly sensitivityLimit: number };

/** What a goal may ask for, and what is offered at first. The window is a row of the parameter table. */
export const GOAL_ROWS = {
  sensitivity: linear('', '', [1.1, 4], 1.6, 'Largest amplification of disturbances at any frequency'),
  phase: linear('', '°', [Math.PI / 18, (8 * Math.PI) / 18], Math.PI / 4, 'Phase margin of the open loop'),
  gain: linear('', '', [1.2, 20], 2.5, 'Gain margin of the open loop, as a factor'),
} as const;

/** A tuning, and what a simulated run with it came to. SI, rad. */
export interface TuningPoint {
  readonly origin: 'as it is' | 'textbook' | 'pretuned';
  /** How it was found, in a few words. */
  readonly label: string;
  /** Makes it live. */
  readonly changes: ParameterChanges;
  /** From the loop analysis: the worse of standing and sliding. Infinity when it is unstable in either. */
  readonly peakSensitivity: number;
  readonly phaseMargin: number | null;
  readonly gainMargin: number | null;
  /** Highest frequency where |L| = 1 while sliding, Hz; null when it never is. */
  readonly crossover: number | null;
  /** From the run: worst settling time of its moves; null when one did not settle, and where settling is not what counts. */
  readonly settlingTime: number | null;
  /** Following error over the part of the run that counts. */
  readonly rmsError: number;
  readonly peakError: number;
  /** Of the amplitude, A, and force of all motors, N: RMS over the run, and the largest. */
  readonly rmsCurrent: number;
  readonly peakCurrent: number;
  readonly rmsForce: number;
  readonly trip: Trip | null;
}

/** A tuning, and what the linear analysis says of it before any run. SI, rad. */
export interface ForeseenTuning
  extends Pick<
    TuningPoint,
    'label' | 'changes' | 'peakSensitivity' | 'phaseMargin' | 'gainMargin' | 'crossover'
  > {
  /** Time constant of the slowest part of the loop: an error that is left decays with it. Null where nothing decays. */
  readonly decay: number | null;
  /** The dry friction, and the largest error that a force of its size causes at any frequency; null without dry friction. */
  readonly friction: { readonly force: number; readonly error: number } | null;
}

/** One value, and why. */
export interface TuningChoice {
  readonly parameter: ParameterName;
  readonly value: RowValue;
  readonly sentence: string;
  /** The rule it came from. */
  readonly rule: string;
}

/** The chosen tuning on a machine that is not as its datasheet says. */
export interface RobustnessRun {
  readonly variation: string;
  readonly peakSensitivity: number;
  readonly settlingTime: number | null;
  readonly rmsError: number;
  readonly rmsCurrent: number;
  readonly trip: Trip | null;
}

/** Following error over a run, m, at times in s: no more points than a chart can show, the extremes kept. */
export interface ErrorCourse {
  readonly time: Float64Array;
  readonly error: Float64Array;
}

export interface PretuneResult {
  readonly goal: PretuneGoal;
  /** What was run, what was judged, and what stands in for a program that cannot be judged: a sentence. */
  readonly judged: string;
  readonly figure: 'settling time' | 'following error';
  readonly best: TuningPoint;
  /** The textbook tuning at the peak sensitivity of the best; null when no textbook tuning gets there. */
  readonly textbook: TuningPoint | null;
  /** Every point a simulated run: the best ones at rising peak sensitivity, the textbook's, and the scene as it is. */
  readonly points: readonly TuningPoint[];
  /** Runs of the best tuning and of the textbook's. */
  readonly courses: { readonly best: ErrorCourse; readonly textbook: ErrorCourse | null };
  readonly choices: readonly TuningChoice[];
  readonly robustness: readonly RobustnessRun[];
}

/** How much is tried: the goal alone, or a trade-off over several peak sensitivities as well. */
export type PretuneBreadth = 'one limit' | 'trade-off';

export interface PretuneProgress {
  readonly stage: string;
  /** Jobs done, of those that are known to come. */
  readonly done: number;
  readonly total: number;
  /** The first answer, before anything has run; null until it is worked out, and where there is none. */
  readonly foreseen: ForeseenTuning | null;
  /** The best tuning within the limit of the goal that has been run so far; null before the first. */
  readonly soFar: TuningSoFar | null;
}

interface TuningSoFar {
  readonly figure: PretuneResult['figure'];
  readonly point: TuningPoint;
}

/**
 * The commands of a pretuning worker: one leads, the others do the jobs it gives them. Ending the workers cancels it. `Port` is
 * the MessagePort of the side that compiles this.
 */
export interface PretuneCommands<Port> {
  /** Does the jobs that come through the port. */
  serve(port: Port): void;
  /**
   * Leads: gives jobs to the workers behind the ports, at least one.
   * @throws RangeError naming what of the goal cannot be, with the allowed range
   */
  pretune(
    scene: Scene,
    goal: PretuneGoal,
    breadth: PretuneBreadth,
    workers: Port[],
    onProgress: (progress: PretuneProgress) => void,
  ): Promise<PretuneResult>;
  /**
   * Leads as well, to the best tuning at the limit of the goal alone, with nothing to compare it with.
   * @throws as `pretune`
   */
  tune(
    scene: Scene,
    goal: PretuneGoal,
    workers: Port[],
    onProgress: (progress: PretuneProgress) => void,
  ): Promise<TuningPoint>;
}
