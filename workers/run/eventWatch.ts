import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';

/**
 * The command is about to arrive when its speed over its deceleration is less than this, s. While the deceleration fades
 * out at constant jerk, v = j t²/2 and a = j t, so that half of the time left is told.
 */
const BEFORE_ARRIVAL = 0.03;

/** How long it is watched once the command stands still, and once the table has slipped, s. */
const AFTER = 0.05;

/** A trip is near when this share of the permitted following error is reached. */
const NEAR_TRIP = 0.5;

/** A table that is urged to move sticks below the first of these shares of the speed it should have, and has slipped above the second. */
const [STICKS, SLIPS] = [0.05, 0.5];
/** It slips only after it has stuck for this long, s: longer than a move takes to overcome friction. */
const STUCK = 0.02;
/** What a hand that pulls is taken to want, m/s. */
const HAND_SPEED = 2e-3;

/** Knows when a run is worth a close look: as a command arrives and the axis settles, as the table slips, and before a trip. */
export class EventWatch {
  /** When the command began to stand still, s; null while it moves. */
  #stillSince: number | null = null;
  #hasMoved = false;
  /** Since when the table has stuck, s; null while it moves or is not urged to. */
  #stuckSince: number | null = null;
  #slippedAt = Number.NEGATIVE_INFINITY;
  #time = 0;

  /** Whether it is now; to be asked about once a millisecond. `record`: every channel, SI; the following error may be `limit`, m. */
  isNear(record: Float64Array, limit: number): boolean {
    const time = valueAt(record, C.time);
    // Another run.
    if (time < this.#time) this.#forget();
    this.#time = time;
    const speed = valueAt(record, C.setSpeed);
    const acceleration = valueAt(record, C.setAcceleration);
    if (speed !== 0) {
      this.#hasMoved = true;
      this.#stillSince = null;
    } else if (this.#hasMoved) this.#stillSince ??= time;
    this.#watchForSlip(time, record);
    const isArriving = speed * acceleration < 0 && Math.abs(speed) < BEFORE_ARRIVAL * Math.abs(acceleration);
    const isSettling = this.#stillSince !== null && time - this.#stillSince < AFTER;
    const isSlipping = time - this.#slippedAt < AFTER;
    return (
      isArriving ||
      isSettling ||
      isSlipping ||
      Math.abs(valueAt(record, C.followingError)) > NEAR_TRIP * limit
    );
  }

  #watchForSlip(time: number, record: Float64Array): void {
    const byHand = valueAt(record, C.handForce) === 0 ? 0 : HAND_SPEED;
    const wanted = Math.max(Math.abs(valueAt(record, C.setSpeed)), byHand);
    const speed = Math.abs(valueAt(record, C.tableSpeed));
    if (wanted === 0) this.#stuckSince = null;
    else if (speed < STICKS * wanted) this.#stuckSince ??= time;
    else if (speed > SLIPS * wanted) {
      if (this.#stuckSince !== null && time - this.#stuckSince > STUCK) this.#slippedAt = time;
      this.#stuckSince = null;
    }
  }

  #forget(): void {
    this.#stillSince = this.#stuckSince = null;
    this.#hasMoved = false;
    this.#slippedAt = Number.NEGATIVE_INFINITY;
  }
}
