import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ProgramOutput } from '../command/setpoint.ts';

/** What a move is measured by of the program. */
export type MoveCommand = Pick<ProgramOutput, 'moving' | 'cycle' | 'position'>;

/**
 * When moves begin, and from when on the encoder reading stays within a window about the target. A move lasts from the start of its
 * commanded motion to the start of the next. m, s.
 */
export class Settling {
  /** When the move under way began; NaN before the first. */
  start = Number.NaN;

  #wasMoving = false;
  #cycle = 0;
  #motionEnd = 0;
  #lastOutside = 0;
  #isInside = false;

  get isMeasuring(): boolean {
    return !Number.isNaN(this.start);
  }

  /** Whether a move begins at a sample of which the program says this. To be asked at each of them, before `take`. */
  begins({ moving, cycle }: Readonly<MoveCommand>): boolean {
    const begins = moving && (!this.#wasMoving || cycle !== this.#cycle);
    this.#wasMoving = moving;
    this.#cycle = cycle;
    return begins;
  }

  begin(time: number): void {
    this.start = time;
    this.#motionEnd = time;
    this.#lastOutside = time;
    this.#isInside = true;
  }

  /** One position-loop sample of the move under way. */
  take(record: Float64Array, { moving, position }: Readonly<MoveCommand>, window: number): void {
    const time = valueAt(record, C.time);
    if (moving) this.#motionEnd = time;
    this.#isInside = Math.abs(position - valueAt(record, C.encoderPosition)) <= window;
    if (!this.#isInside) this.#lastOutside = time;
  }

  /** Nothing is measured until the next move begins. */
  end(): void {
    this.start = Number.NaN;
  }

  /** From the end of the commanded motion; null while the reading is outside. */
  get time(): number | null {
    return this.#isInside ? this.least : null;
  }

  /** What it takes at least, whatever comes. */
  get least(): number {
    return this.isMeasuring ? Math.max(this.#lastOutside - this.#motionEnd, 0) : 0;
  }
}
