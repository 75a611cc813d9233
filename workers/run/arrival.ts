import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { MoveCommand } from './settling.ts';

/** Shares of a step between which it counts as rising. */
const RISE_FROM = 0.1;
const RISE_TO = 0.9;

/**
 * How the encoder reading gets from where a motion begins to where it is commanded to end: rise of a step, and overshoot
 * after the commanded end. m, s.
 */
export class Arrival {
  #from = 0;
  #opening = 0;
  #stepHeight = 0;
  #direction = 0;
  #passed = Number.NaN;
  #rise = Number.NaN;
  #beyond = 0;
  #stood = false;
  #lastTime = 0;
  #lastShare = 0;

  /** A motion begins `from` a standing setpoint; a `setpoint` that is elsewhere at once has been stepped there, unless it moves on. */
  begin(time: number, from: number, setpoint: number): void {
    this.#from = from;
    this.#opening = setpoint;
    this.#stepHeight = setpoint - from;
    this.#direction = 0;
    this.#passed = Number.NaN;
    this.#rise = Number.NaN;
    this.#beyond = 0;
    this.#stood = false;
    this.#lastTime = time;
    this.#lastShare = 0;
  }

  /** One position-loop sample; `setpoint` is that of the program, before it was shaped. */
  take(record: Float64Array, { moving, position: setpoint }: Readonly<MoveCommand>): void {
    const time = valueAt(record, C.time);
    const reading = valueAt(record, C.encoderPosition);
    if (moving && setpoint !== this.#opening) this.#movesOn();
    if (this.#stepHeight !== 0) this.#takeRise(time, (reading - this.#from) / this.#stepHeight);
    if (moving) return;
    this.#stood = true;
    this.#direction = Math.sign(setpoint - this.#from);
    this.#beyond = Math.max(this.#beyond, this.#direction * (reading - setpoint));
  }

  get riseTime(): number | null {
    return Number.isNaN(this.#rise) ? null : this.#rise;
  }

  get overshoot(): number | null {
    return this.#stood && this.#direction !== 0 ? this.#beyond : null;
  }

  /** No step: a profile that begins where the setpoint was set anew, as after switching the drive on. */
  #movesOn(): void {
    this.#from = this.#opening;
    this.#stepHeight = 0;
    this.#rise = Number.NaN;
  }

  #takeRise(time: number, share: number): void {
    if (Number.isNaN(this.#passed) && share >= RISE_FROM) this.#passed = this.#timeOf(RISE_FROM, time, share);
    if (Number.isNaN(this.#rise) && share >= RISE_TO)
      this.#rise = this.#timeOf(RISE_TO, time, share) - this.#passed;
    this.#lastTime = time;
    this.#lastShare = share;
  }

  /** When the share was `level`, on the straight line from the last sample to this one. */
  #timeOf(level: number, time: number, share: number): number {
    if (share === this.#lastShare) return time;
    return this.#lastTime + ((level - this.#lastShare) / (share - this.#lastShare)) * (time - this.#lastTime);
  }
}
