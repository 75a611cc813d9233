import type { Trip } from './axis.ts';

/** Evaluation of positioning after ISO 230-2:2014; all in m. Index: target. `up` is the approach in +x, `down` in −x. */
export interface PositioningFigures {
  readonly meanUp: readonly number[];
  readonly meanDown: readonly number[];
  /** Standard uncertainties s (n − 1), per target. */
  readonly spreadUp: readonly number[];
  readonly spreadDown: readonly number[];
  /** Reversal error B: the largest of the targets, and their mean. */
  readonly reversal: number;
  readonly meanReversal: number;
  /** Repeatability R: bidirectional, and in either direction. */
  readonly repeatability: number;
  readonly repeatabilityUp: number;
  readonly repeatabilityDown: number;
  /** Systematic error E: bidirectional, and in either direction; range M of the mean. */
  readonly systematic: number;
  readonly systematicUp: number;
  readonly systematicDown: number;
  readonly meanRange: number;
  /** Accuracy A: bidirectional, and in either direction. */
  readonly accuracy: number;
  readonly accuracyUp: number;
  readonly accuracyDown: number;
}

/** Positioning of the tool, in the state that the axis is in. */
export interface PositioningTest {
  readonly state: 'cold' | 'warm' | 'worn';
  /** m. */
  readonly targets: readonly number[];
  /** Deviation of the tool from the target, m: up[target][approach]. */
  readonly up: readonly (readonly number[])[];
  readonly down: readonly (readonly number[])[];
  readonly figures: PositioningFigures;
}

export interface StaircaseTest {
  readonly step: number;
  /** Of the tool from where it stood at the start, sampled for a chart: s, m, m. */
  readonly time: readonly number[];
  readonly set: readonly number[];
  readonly tool: readonly number[];
  /** Largest difference of a stair's mean from its set height, and rms noise while standing, m. */
  readonly largestError: number;
  readonly noise: number;
}

/** A scan at constant speed. */
export interface RippleTest {
  /** As the job asks, or what the travel and twenty seconds have room for: m/s, m. */
  readonly speed: number;
  readonly length: number;
  /** Half of peak to peak, and rms, as shares of the set speed, of every sample. */
  readonly peak: number;
  readonly rms: number;
  /** The same within the bandwidth of the job, Hz: behind a Butterworth low-pass of second order. */
  readonly bandwidth: number;
  readonly inBand: {
    readonly peak: number;
    readonly rms: number;
    /** m and share of the set speed, as below. */
    readonly distance: readonly number[];
    readonly deviation: readonly number[];
  };
  /** Speed ripple against distance, m and share of the set speed: the smallest and the largest of each stretch, for a chart. */
  readonly distance: readonly number[];
  readonly deviation: readonly number[];
  /** Its spectrum: amplitude (share of the set speed) at each period along the axis, m, ascending to a third of the length, beyond which none is told. */
  readonly period: readonly number[];
  readonly amplitude: readonly number[];
  /** The strongest lines, strongest first. `cause` names the term of the model whose own period this is, computed from the parameters. */
  readonly lines: readonly {
    readonly period: number;
    readonly amplitude: number;
    /** What the low-pass leaves of the amplitude. */
    readonly inBand: number;
    readonly cause: string | null;
  }[];
}

/** Steps of falling size, up and down; workers/accuracy/increment.ts says when one is made. */
export interface IncrementTest {
  /** Minimum incremental motion at the tool, m; null when none of those tested. */
  readonly smallest: number | null;
  readonly tried: readonly {
    /** m; mean and standard deviation of one step, the tool's jitter included, in the direction of the command. */
    readonly step: number;
    readonly mean: number;
    readonly spread: number;
    readonly made: boolean;
  }[];
}

/** A force that comes at once and stays. */
export interface DisturbanceTest {
  readonly force: number;
  /** Largest deviation of the table from where it stood, m; force over it, N/m; time until it stays in the window, s, null when it does not. */
  readonly peak: number;
  readonly stiffness: number;
  readonly recovery: number | null;
  readonly time: readonly number[];
  readonly error: readonly number[];
}

/** Where the energy of one cycle goes, as warm as at the end of a day, J: drawn = returned + copper + iron + guide + nut + other + work + stored. */
export interface EnergyFlow {
  readonly cycleTime: number;
  readonly drawn: number;
  readonly returned: number;
  readonly copper: number;
  readonly iron: number;
  readonly guide: number;
  readonly nut: number;
  readonly other: number;
  /** Done on the process. */
  readonly work: number;
  /** Left in motion, springs and height at the end of the cycle. What rounding leaves of the account is below a millionth of it. */
  readonly stored: number;
}

/** A test that could not be ended: the drive tripped. */
export interface TrippedTest {
  readonly trip: Trip;
}

export type TestResult<T> = T | TrippedTest;

export interface Accuracy {
  /** As cold as the room, as warm as at the end of a day, and worn as well; without a nut nothing wears. */
  readonly positioning: readonly TestResult<PositioningTest>[];
  readonly staircase: TestResult<StaircaseTest>;
  readonly ripple: TestResult<RippleTest>;
  readonly increment: TestResult<IncrementTest>;
  readonly disturbance: TestResult<DisturbanceTest>;
  readonly energy: TestResult<EnergyFlow>;
}
