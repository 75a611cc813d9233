import { newSegmentCommand, type SegmentCommand } from '../../shared/motion/setpoint.ts';

/** Everything that is commanded at one position-loop sample. */
export interface ProgramOutput extends SegmentCommand {
  /**
   * Commanded motion in progress; every motion is visible at one sample at least, even a step that
   * takes no time.
   */
  moving: boolean;
  /** Cycles of the program finished since the reset. */
  cycle: number;
  /** Segments (move, dwell, period, test frequency…) finished since the reset. */
  segment: number;
}

export function newProgramOutput(): ProgramOutput {
  return Object.assign(newSegmentCommand(), { moving: false, cycle: 0, segment: 0 });
}
