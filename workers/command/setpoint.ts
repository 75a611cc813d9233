import { newSetpoint, type Setpoint } from '../../shared/motion/setpoint.ts';

/** All that is commanded at one position-loop sample. */
export interface ProgramOutput extends Setpoint {
  /** Injected at the loop output, N. */
  force: number;
  /** Commanded motion in progress; every motion is seen at one sample at least, even a step that takes no time. */
  moving: boolean;
  /** Cycles of the program finished since the reset. */
  cycle: number;
  /** Segments (move, dwell, period, test frequency...) finished since the reset. */
  segment: number;
  /** Of the injected sweep, Hz and rad since it began to swing at zero phase; both 0 without one. */
  frequency: number;
  phase: number;
}

export function newProgramOutput(): ProgramOutput {
  return { ...newSetpoint(), force: 0, moving: false, cycle: 0, segment: 0, frequency: 0, phase: 0 };
}
