import { voltageLimit } from '../../shared/axis/motor.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { MoveFigures } from '../../shared/protocol/axis.ts';
import { Arrival } from './arrival.ts';
import { SpeedRipple } from './speedRipple.ts';
import { Tally } from './tally.ts';

/**
 * Measures one move after the other, as shared/figures/moveFigures.ts defines its figures. A move lasts from the start of its commanded motion to the
 * start of the next, so its dwell belongs to it; an oscillation is measured cycle by cycle. Position and speed are looked at where
 * the position loop samples them, force, current and voltage in every current-loop period.
 */
export class MoveMeter {
  /** Moves measured so far. */
  count = 0;
  last: MoveFigures | null = null;

  #begun = false;
  #wasMoving = false;
  #cycle = 0;
  #lastSetpoint: number;
  #startTime = 0;
  #startCopper = 0;
  #motionEnd = 0;
  #lastOutside = 0;
  #settled = false;
  readonly #arrival = new Arrival();
  readonly #ripple = new SpeedRipple();
  readonly #error = new Tally();
  readonly #force = new Tally();
  readonly #current = new Tally();
  readonly #currentUse = new Tally();
  readonly #voltageUse = new Tally();

  /** The axis stands at `start` (m) when the run begins. */
  constructor(start: number) {
    this.#lastSetpoint = start;
  }

  /** When the move under way began, s; null before the first. */
  get presentStart(): number | null {
    return this.#begun ? this.#startTime : null;
  }

  /** One position-loop sample, before its `period`; `window` in m, `copper` the copper loss so far in J. */
  sample(record: Float64Array, moving: boolean, cycle: number, window: number, copper: number): void {
    const time = valueAt(record, C.time);
    const starts = moving && (!this.#wasMoving || cycle !== this.#cycle);
    if (starts) {
      if (this.#begun) this.#close(time, copper);
      this.#open(record, time, copper);
    }
    if (this.#begun) this.#measure(record, time, moving, window);
    this.#wasMoving = moving;
    this.#cycle = cycle;
    this.#lastSetpoint = valueAt(record, C.setpoint);
  }

  /** One current-loop period. */
  period(record: Float64Array, p: Readonly<Parameters>): void {
    if (!this.#begun) return;
    this.#force.add(valueAt(record, C.motorForce));
    this.#current.add(Math.hypot(valueAt(record, C.forceCurrent), valueAt(record, C.fieldCurrent)));
    this.#currentUse.add(currentUse(record));
    this.#voltageUse.add(voltageUse(record, p));
  }

  /** Closes what is being measured, at the end of a run. */
  finish(time: number, copper: number): void {
    if (this.#begun && this.#error.count > 0) this.#close(time, copper);
    this.#begun = false;
  }

  #open(record: Float64Array, time: number, copper: number): void {
    this.#begun = true;
    this.#startTime = time;
    this.#startCopper = copper;
    this.#motionEnd = time;
    this.#lastOutside = time;
    this.#settled = true;
    this.#arrival.begin(time, this.#lastSetpoint, valueAt(record, C.setpoint));
    this.#ripple.clear();
    this.#error.clear();
    this.#force.clear();
    this.#current.clear();
    this.#currentUse.clear();
    this.#voltageUse.clear();
  }

  #measure(record: Float64Array, time: number, moving: boolean, window: number): void {
    const error = valueAt(record, C.followingError);
    if (moving) this.#motionEnd = time;
    this.#settled = Math.abs(error) <= window;
    if (!this.#settled) this.#lastOutside = time;
    this.#error.add(error);
    this.#arrival.take(time, moving, valueAt(record, C.setpoint), valueAt(record, C.encoderPosition));
    if (moving)
      this.#ripple.take(
        valueAt(record, C.setSpeed),
        valueAt(record, C.setAcceleration),
        valueAt(record, C.tableSpeed),
      );
  }

  #close(time: number, copper: number): void {
    const duration = time - this.#startTime;
    this.last = {
      index: this.count++,
      duration,
      riseTime: this.#arrival.riseTime,
      settlingTime: this.#settled ? Math.max(this.#lastOutside - this.#motionEnd, 0) : null,
      overshoot: this.#arrival.overshoot,
      peakError: this.#error.peak,
      rmsError: this.#error.rms,
      velocityRipplePeak: this.#ripple.peakToPeak,
      velocityRippleRms: this.#ripple.rms,
      peakForce: this.#force.peak,
      rmsForce: this.#force.rms,
      peakCurrent: this.#current.peak,
      rmsCurrent: this.#current.rms,
      currentHeadroom: 1 - this.#currentUse.peak,
      voltageHeadroom: 1 - this.#voltageUse.peak,
      copperLoss: duration > 0 ? (copper - this.#startCopper) / duration : 0,
    };
  }
}

/** Commanded current as a share of the current limit of the moment. */
export function currentUse(record: Float64Array): number {
  const limit = valueAt(record, C.currentLimit);
  return limit > 0 ? valueAt(record, C.currentCommand) / limit : 0;
}

/** Voltage amplitude as a share of what the bus gives. */
export function voltageUse(record: Float64Array, p: Readonly<Parameters>): number {
  return valueAt(record, C.voltage) / voltageLimit(p);
}
