import { positionRate } from '../../shared/core/crossChecks.ts';
import { shapingRows } from '../../shared/core/parameters/shaping.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Setpoint } from '../../shared/motion/setpoint.ts';
import { isShaped, type Shaping, shapingTimes } from '../../shared/motion/shaping.ts';
import type { ProgramOutput } from './setpoint.ts';
import { SignalShaper } from './signalShaper.ts';

/** After so many of its time constants nothing is left of what went through the setpoint filter: e⁻⁴⁰ of a metre. */
const FILTER_MEMORY = 40;

type Signals = Readonly<Record<keyof Setpoint, SignalShaper>>;

const NAMES = Object.keys(shapingRows) as (keyof Shaping)[];

function isSame(a: Shaping, b: Shaping): boolean {
  return NAMES.every((name) => a[name] === b[name]);
}

/**
 * Shapes what the program commands: position, speed, acceleration and jerk alike, so that the feedforward stays that of the shaped
 * position. Injected forces pass unshaped.
 *
 * Other shaping takes effect once the command has stood still for as long as the shaping in use remembers, or when the drive is
 * switched on: so no change makes the setpoint jump.
 */
export class CommandShaper {
  readonly #period: number = 0;
  #shaping: Shaping;
  #wanted: Shaping;
  /** Samples after which nothing is left of a motion. */
  #memory = 0;
  /** Samples for which the command has stood still. */
  #still = Infinity;
  #lastPosition = 0;
  /** Null where nothing shapes. */
  #signals: Signals | null;

  constructor(p: Parameters) {
    this.#period = 1 / positionRate(p);
    this.#shaping = this.#wanted = { ...p };
    this.#lastPosition = p.start;
    this.#signals = this.#newSignals();
    this.#adopt(p.start);
  }

  setParameters(p: Parameters): void {
    if (!isSame(p, this.#wanted)) this.#wanted = { ...p };
  }

  /** As if the axis had always been commanded to stand at `position`, m. */
  standAt(position: number): void {
    this.#adopt(position);
    this.#lastPosition = position;
  }

  /** The command of one position-loop sample, shaped. */
  step(command: Readonly<ProgramOutput>, out: ProgramOutput): void {
    this.#watch(command);
    const signals = this.#signals;
    out.position = signals ? signals.position.step(command.position) : command.position;
    out.speed = signals ? signals.speed.step(command.speed) : command.speed;
    out.acceleration = signals ? signals.acceleration.step(command.acceleration) : command.acceleration;
    out.jerk = signals ? signals.jerk.step(command.jerk) : command.jerk;
    out.force = command.force;
    out.cutting = command.cutting;
    out.frequency = command.frequency;
    out.phase = command.phase;
    out.cycle = command.cycle;
    out.segment = command.segment;
    out.moving = command.moving || this.#still < this.#memory;
  }

  #watch(command: Readonly<ProgramOutput>): void {
    const stands =
      command.position === this.#lastPosition &&
      command.speed === 0 &&
      command.acceleration === 0 &&
      command.jerk === 0;
    this.#still = stands ? this.#still + 1 : 0;
    this.#lastPosition = command.position;
    if (this.#still === this.#memory + 1) this.#fill(command.position);
    if (this.#still > this.#memory && this.#wanted !== this.#shaping) this.#adopt(command.position);
  }

  #adopt(position: number): void {
    this.#shaping = this.#wanted;
    const { jerkRamp, shaper, setpointFilter } = shapingTimes(this.#shaping);
    const remembered = jerkRamp + shaper + FILTER_MEMORY * setpointFilter;
    // Two samples more, because shares of a sample reach one further.
    this.#memory = remembered > 0 ? Math.ceil(remembered / this.#period) + 2 : 0;
    this.#signals = this.#newSignals();
    this.#fill(position);
    this.#still = Infinity;
  }

  #newSignals(): Signals | null {
    if (!isShaped(this.#shaping)) return null;
    const signal = () => new SignalShaper(this.#shaping, this.#period);
    return { position: signal(), speed: signal(), acceleration: signal(), jerk: signal() };
  }

  #fill(position: number): void {
    this.#signals?.position.standAt(position);
    this.#signals?.speed.standAt(0);
    this.#signals?.acceleration.standAt(0);
    this.#signals?.jerk.standAt(0);
  }
}
