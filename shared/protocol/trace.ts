/** A stretch of time in which nothing, or not everything, was recorded, s. */
export interface TraceGap {
  readonly from: number;
  readonly to: number;
}

/**
 * A recorded run of one axis, measured or exported, on an even grid of time. SI; NaN in the gaps. Every series has the same length.
 * `resampled` says how the grid came about: 'as recorded'; 'time rounded': the rows are even, only their times were written with too
 * few digits; 'interpolated': the rows were uneven.
 */
export interface Trace {
  /** Of the grid, s. */
  readonly period: number;
  /** Time of the first sample, s. */
  readonly start: number;
  /** As the position loop reads it. */
  readonly position: Float64Array<ArrayBuffer>;
  /** Force current as measured and as commanded, A of amplitude, all motors together. One of the two is there. */
  readonly current: Float64Array<ArrayBuffer> | null;
  readonly currentCommand: Float64Array<ArrayBuffer> | null;
  readonly setpoint: Float64Array<ArrayBuffer> | null;
  /** On both sides of the link between motor and table, where they were recorded. */
  readonly motorPosition: Float64Array<ArrayBuffer> | null;
  readonly tablePosition: Float64Array<ArrayBuffer> | null;
  readonly gaps: readonly TraceGap[];
  readonly resampled: 'as recorded' | 'time rounded' | 'interpolated';
}

/** What a column of a recording can hold. */
export const TRACE_QUANTITIES = [
  'time',
  'position',
  'current',
  'currentCommand',
  'setpoint',
  'motorPosition',
  'tablePosition',
] as const;

export type TraceQuantity = (typeof TRACE_QUANTITIES)[number];

/** How the quantities are called where a person assigns columns to them. */
export const TRACE_LABELS: Readonly<Record<TraceQuantity, string>> = {
  time: 'Time',
  position: 'Position at the encoder',
  current: 'Force current',
  currentCommand: 'Current command',
  setpoint: 'Setpoint',
  motorPosition: 'Motor position',
  tablePosition: 'Table position',
};
