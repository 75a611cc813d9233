import type { SegmentCommand } from './setpoint.ts';

/** A section of a program. There is one object of each kind, planned anew each time it is used. */
export interface Segment {
  /** s; Infinity stays until the parameters change. */
  readonly duration: number;
  /** Commanded motion, in contrast to standing still with or without an injected force. */
  readonly moving: boolean;
  /** The next segment swings on from here: it begins at the exact end of this one, and nothing comes between. */
  readonly swingsOn: boolean;
  /** Where the setpoint is at the end, m. */
  readonly end: number;
  /** Fills the setpoint, and force, frequency and phase where it injects any, `t` seconds after its start. */
  sample(t: number, out: SegmentCommand): void;
  /** Instants from 0 to the duration, s, ascending; from each to the next the jerk is constant, or nearly so. */
  corners(): readonly number[];
}
