import { CHANNEL_INDEX as C } from '../../shared/channels.ts';
import type { MoveFigures } from '../../shared/protocol.ts';
import { Tally } from './tally.ts';

/**
 * Measures one move after the other from the records at the position-loop samples. A move lasts from the start of its commanded
 * motion to the start of the next, so its dwell belongs to it; an oscillation is measured cycle by cycle.
 *
 * Settling time: from the end of the commanded motion to the last sample at which |following error| was outside the window.
 */
export class MoveMeter {
  /** Moves measured so far. */
  count = 0;
  last: MoveFigures | null = null;

  private begun = false;
  private wasMoving = false;
  private cycle = 0;
  private startTime = 0;
  private startCopper = 0;
  private motionEnd = 0;
  private lastOutside = 0;
  private settled = false;
  private readonly error = new Tally();
  private readonly force = new Tally();
  private readonly current = new Tally();

  /** One position-loop sample; `window` in m, `copper` the copper loss so far in J. */
  sample(record: Float64Array, moving: boolean, cycle: number, window: number, copper: number): void {
    const time = record[C.time]!;
    const starts = moving && (!this.wasMoving || cycle !== this.cycle);
    if (starts) {
      if (this.begun) this.close(time, copper);
      this.open(time, copper);
    }
    if (this.begun) this.measure(record, time, moving, window);
    this.wasMoving = moving;
    this.cycle = cycle;
  }

  /** Closes what is being measured, at the end of a run. */
  finish(time: number, copper: number): void {
    if (this.begun && this.error.count > 0) this.close(time, copper);
    this.begun = false;
  }

  private open(time: number, copper: number): void {
    this.begun = true;
    this.startTime = time;
    this.startCopper = copper;
    this.motionEnd = time;
    this.lastOutside = time;
    this.settled = true;
    this.error.clear();
    this.force.clear();
    this.current.clear();
  }

  private measure(record: Float64Array, time: number, moving: boolean, window: number): void {
    const error = record[C.followingError]!;
    if (moving) this.motionEnd = time;
    this.settled = Math.abs(error) <= window;
    if (!this.settled) this.lastOutside = time;
    this.error.add(error);
    this.force.add(record[C.motorForce]!);
    this.current.add(Math.hypot(record[C.forceCurrent]!, record[C.fieldCurrent]!));
  }

  private close(time: number, copper: number): void {
    const duration = time - this.startTime;
    this.last = {
      index: this.count++,
      duration,
      peakError: this.error.peak,
      rmsError: this.error.rms,
      settlingTime: this.settled ? Math.max(this.lastOutside - this.motionEnd, 0) : null,
      peakForce: this.force.peak,
      rmsForce: this.force.rms,
      peakCurrent: this.current.peak,
      rmsCurrent: this.current.rms,
      copperLoss: duration > 0 ? (copper - this.startCopper) / duration : 0,
    };
  }
}
