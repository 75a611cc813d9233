/** Where the axis shall be at one instant: m, m/s, m/s², m/s³. One object is made once and filled again and again. */
export interface Setpoint {
  position: number;
  speed: number;
  acceleration: number;
  jerk: number;
}

/** All that a segment of a program commands at one instant. */
export interface SegmentCommand extends Setpoint {
  /** Injected at the loop output, N. */
  force: number;
  /** Of the process against the motion, that this move has of its own, N. */
  cutting: number;
  /** Of the injected sweep, Hz and rad since it began to swing at zero phase; both 0 without one. */
  frequency: number;
  phase: number;
}

/** Made by a class, so that the engine takes all of them for objects of one kind: code that meets many kinds reads slowly. */
class StandingSetpoint implements Setpoint {
  position = 0;
  speed = 0;
  acceleration = 0;
  jerk = 0;
}

class StandingCommand extends StandingSetpoint implements SegmentCommand {
  force = 0;
  cutting = 0;
  frequency = 0;
  phase = 0;
}

export function newSetpoint(): Setpoint {
  return new StandingSetpoint();
}

export function newSegmentCommand(): SegmentCommand {
  return new StandingCommand();
}

export function standAt(position: number, out: Setpoint): void {
  out.position = position;
  out.speed = 0;
  out.acceleration = 0;
  out.jerk = 0;
}
