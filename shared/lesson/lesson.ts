import type { ChannelName } from '../core/channels.ts';
import type { ParameterChanges, ParameterName } from '../core/parameters/table.ts';
import type { Scene } from '../core/scene.ts';
import type { LoopFigureName } from '../figures/loopFigures.ts';
import type { MoveFigureName } from '../figures/moveFigures.ts';

/** A lesson for a class in front of a projector: steps that are predicted, run and compared with the prediction. Checked. */
export interface Lesson {
  readonly title: string;
  /** What the class knows afterwards. */
  readonly aim: string;
  /** For the trainer; not shown to the class. */
  readonly notes: readonly string[];
  readonly steps: readonly LessonStep[];
}

/** One step: the bench as it is set for it, what the class is asked, the run, and the answer. */
export interface LessonStep {
  readonly title: string;
  /** Said before anything runs. */
  readonly text: string;
  /** For the trainer; may be empty. */
  readonly notes: string;
  /** With the changes of the step. */
  readonly scene: Scene;
  readonly view: StepView;
  readonly pointAt: readonly Pointer[];
  readonly question: Question | null;
  readonly run: StepRun | null;
  readonly measures: readonly Measure[];
  readonly answer: Answer;
}

export const CUTAWAYS = ['closed', 'phase current', 'temperature', 'field'] as const;
export const AREAS = ['motion', 'loop'] as const;

export interface StepView {
  readonly cutaway: (typeof CUTAWAYS)[number];
  /** Below the stage: the motion over time, or the loop over frequency. */
  readonly area: (typeof AREAS)[number];
  /** Time across the charts, s; null: as suits the program. */
  readonly window: number | null;
  readonly camera: StepCamera;
}

/** From the view that shows the whole machine: turned and raised, rad, and nearer by a factor. */
interface StepCamera {
  readonly turn: number;
  readonly rise: number;
  readonly closer: number;
}

export const STAGE_PLACES = ['table', 'magnifier'] as const;
export const GAUGE_PLACES = ['Following error', 'Winding', 'Current', 'Motor force', 'Voltage'] as const;
export const CHART_PLACES = [
  'Position',
  'Following error',
  'Speed',
  'Current',
  'Force',
  'Temperature',
] as const;

/** What matters in a step, to be marked on the page. */
export type Pointer =
  | { readonly stage: (typeof STAGE_PLACES)[number] }
  | { readonly gauge: (typeof GAUGE_PLACES)[number] }
  | { readonly chart: (typeof CHART_PLACES)[number] }
  | { readonly field: ParameterName };

export interface Question {
  readonly text: string;
  /** Two to four. */
  readonly answers: readonly string[];
  /** Index of the answer that the run bears out. */
  readonly right: number;
}

/** Longest run of a step, s, and most points of its hand, and changes. */
export const LONGEST_RUN = 120;
export const MAX_EVENTS = 100;

/** Most figures that are measured in a step. */
export const MAX_MEASURES = 8;

/** Slowest and fastest run, simulated seconds per second. */
export const PACES = [1e-3, 10] as const;

/** What happens in a step, in simulated time from its start, s. */
export interface StepRun {
  readonly seconds: number;
  /** Simulated seconds per second. */
  readonly pace: number;
  readonly hand: readonly HandPoint[];
  readonly changes: readonly TimedChange[];
}

/** The hand moves on a straight line from one point to the next; null lets go of the table. */
export interface HandPoint {
  readonly time: number;
  readonly to: number | null;
}

export interface TimedChange {
  readonly time: number;
  readonly parameters: ParameterChanges;
}

/** A figure with a name, measured in a step and quoted in this one and later ones. */
export interface Measure {
  readonly id: string;
  /** Whose figure it is, where several are compared: 'with iron'; may be empty. */
  readonly of: string;
  readonly source: MeasureSource;
}

export const MOVES_TAKEN = ['last', 'worst'] as const;
export const VALUES_TAKEN = ['highest', 'lowest', 'peak', 'peak to peak', 'last'] as const;
export type ValueTaken = (typeof VALUES_TAKEN)[number];

export type MeasureSource =
  | { readonly kind: 'move'; readonly figure: MoveFigureName; readonly take: (typeof MOVES_TAKEN)[number] }
  | ChannelSource
  /** Of the loop as the step sets it, with the guide sliding. */
  | { readonly kind: 'loop'; readonly figure: LoopFigureName }
  /** When the drive tripped. */
  | { readonly kind: 'trip' };

/** Of what the recorder keeps of a channel between two times of the run, s. */
export interface ChannelSource {
  readonly kind: 'channel';
  readonly channel: ChannelName;
  readonly take: ValueTaken;
  readonly from: number;
  readonly to: number;
}

export interface Answer {
  readonly text: string;
  /** What the figures must bear out. */
  readonly claims: readonly Claim[];
  /** What the model leaves out here, for an honest answer; may be empty. */
  readonly notShown: string;
}

export const RELATIONS = ['more than', 'less than', 'none', 'some'] as const;

/**
 * `measure` is more or less than `times` the measure or the SI value `than`; or there is no such figure at all ('none': not settled, not
 * tripped), or there is one ('some').
 */
export interface Claim {
  readonly measure: string;
  readonly is: (typeof RELATIONS)[number];
  readonly times: number;
  readonly than: string | number | null;
}
