import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { Arrival } from './arrival.ts';
import type { Effort } from './effort.ts';
import { type MoveCommand, Settling } from './settling.ts';
import { SpeedRipple } from './speedRipple.ts';
import { PartedTally, type Tally } from './tally.ts';

/**
 * Measures one move after the other, as shared/figures/moveFigures.ts defines its figures. A move lasts from the start of its commanded motion to the
 * start of the next, so its dwell belongs to it; an oscillation is measured cycle by cycle. Position and speed are looked at where
 * the position loop samples them, force, current and voltage in every current-loop period.
 *
 * Start, end and target of a move are those of the program: what the shaping of its command takes longer counts as settling.
 */
export class MoveMeter {
  /** Moves measured so far. */
  count = 0;
  last: MoveFigures | null = null;

  #lastTarget = 0;
  #startCopper = 0;
  readonly #settling = new Settling();
  readonly #arrival = new Arrival();
  readonly #ripple = new SpeedRipple();
  readonly #error = new PartedTally();
  readonly #force = new PartedTally();
  readonly #current = new PartedTally();
  readonly #currentUse = new PartedTally();
  readonly #voltageUse = new PartedTally();
  /** Of everything so far, before the first move, too. */
  readonly whole: Readonly<Record<'error' | 'force' | 'current' | 'currentUse' | 'voltageUse', Tally>> = {
    error: this.#error.whole,
    force: this.#force.whole,
    current: this.#current.whole,
    currentUse: this.#currentUse.whole,
    voltageUse: this.#voltageUse.whole,
  };

  /** The axis stands at `start` (m) when the run begins. */
  constructor(start: number) {
    this.#lastTarget = start;
  }

  /** When the move under way began, s; null before the first. */
  get presentStart(): number | null {
    return this.#settling.isMeasuring ? this.#settling.start : null;
  }

  /** The move under way takes at least this long to settle, s. */
  get minSettlingTime(): number {
    return this.#settling.least;
  }

  /**
   * One position-loop sample, before its `period`.
   *
   * @param command of the program, before it was shaped
   * @param window m
   * @param copper copper loss so far, J
   */
  sample(record: Float64Array, command: Readonly<MoveCommand>, window: number, copper: number): void {
    const time = valueAt(record, C.time);
    const { position } = command;
    if (this.#settling.begins(command)) {
      if (this.#settling.isMeasuring) this.#close(time, copper);
      this.#open(position, time, copper);
    }
    this.#error.add(valueAt(record, C.followingError));
    if (this.#settling.isMeasuring) this.#measure(record, command, window);
    this.#lastTarget = position;
  }

  /** One current-loop period. */
  period({ force, current, currentUse, voltageUse }: Readonly<Effort>): void {
    this.#force.add(force);
    this.#current.add(current);
    this.#currentUse.add(currentUse);
    this.#voltageUse.add(voltageUse);
  }

  /** Closes what is being measured, at the end of a run. */
  finish(time: number, copper: number): void {
    if (this.#settling.isMeasuring) this.#close(time, copper);
    this.#settling.end();
  }

  #open(position: number, time: number, copper: number): void {
    this.#settling.begin(time);
    this.#startCopper = copper;
    this.#arrival.begin(time, this.#lastTarget, position);
    this.#ripple.clear();
    this.#error.part.clear();
    this.#force.part.clear();
    this.#current.part.clear();
    this.#currentUse.part.clear();
    this.#voltageUse.part.clear();
  }

  #measure(record: Float64Array, command: Readonly<MoveCommand>, window: number): void {
    this.#settling.take(record, command, window);
    this.#arrival.take(record, command);
    this.#ripple.take(record);
  }

  #close(time: number, copper: number): void {
    const duration = time - this.#settling.start;
    this.last = {
      index: this.count++,
      duration,
      riseTime: this.#arrival.riseTime,
      settlingTime: this.#settling.time,
      overshoot: this.#arrival.overshoot,
      peakError: this.#error.part.peak,
      rmsError: this.#error.part.rms,
      velocityRipplePeak: this.#ripple.peakToPeak,
      velocityRippleRms: this.#ripple.rms,
      peakForce: this.#force.part.peak,
      rmsForce: this.#force.part.rms,
      peakCurrent: this.#current.part.peak,
      rmsCurrent: this.#current.part.rms,
      currentHeadroom: 1 - this.#currentUse.part.peak,
      voltageHeadroom: 1 - this.#voltageUse.part.peak,
      copperLoss: duration > 0 ? (copper - this.#startCopper) / duration : 0,
    };
  }
}
