import { slowPace } from '../../shared/protocol/slowMotion.ts';
import type { Session } from '../run/session.ts';

/** Longest stretch of work between two looks at the message queue, ms. */
const BUDGET = 8;
/** Ticks between two looks at the clock. */
const BATCH = 16;
/** Backlog that is still caught up with after a stall, s of wall clock. What is more is reported as lost. */
const MAX_BACKLOG = 0.1;
/** Time over which the achieved pace is averaged, s. */
const TIME_SCALE_MEMORY = 0.5;

/** What the pacer drives: how many seconds a tick is worth, when to stop. */
export interface Paced {
  readonly session: Session;
  /** True as long as the run may go on; asked before each tick. */
  mayStep(): boolean;
  /** Whether something happens that is to be seen slowly; asked every batch of ticks. */
  isEventful(): boolean;
}

/** So much of a period may be missing of a time that was to be reached: sums of periods round. */
const ROUNDING = 1e-6;

/**
 * Turns wall-clock time into ticks. The only place that looks at a clock: the run itself never knows how fast it goes.
 * `pace` is simulated seconds per second, Infinity as fast as it goes.
 */
export class Pacer {
  timeScale = 1;
  /** Simulated time to which the run is led at whatever pace, s, and at which it waits; null: the clock leads. */
  until: number | null = null;
  achieved = 0;
  /** Wall-clock seconds that could not be kept up with since the start. */
  lost = 0;
  /** Something happens that is to be seen slowly. A led run waits where it begins, until whoever leads it knows. */
  isSlow = false;

  #last = 0;
  #due = 0;

  /** Starts counting from now (ms), by the clock. */
  start(now: number): void {
    this.until = null;
    this.#last = now;
    this.#due = 0;
    this.lost = 0;
    this.achieved = 0;
  }

  /** Runs what is due, within the budget; `clock` gives the time in ms. Returns true when more is due already. */
  pump(paced: Paced, clock: () => number): boolean {
    const now = clock();
    const elapsed = (now - this.#last) / 1000;
    this.#last = now;
    const { axis } = paced.session;
    const period = 1 / axis.parameters.currentRate;
    if (this.until === null) this.#accrue(elapsed, period);
    else this.#due = Math.floor((this.until - axis.time) / period + ROUNDING);

    let done = 0;
    while (this.#due >= 1 && clock() - now < BUDGET && paced.mayStep()) {
      for (let i = 0; i < BATCH && this.#due >= 1 && paced.mayStep(); i++) {
        paced.session.step();
        this.#due--;
        done++;
      }
      if (paced.isEventful() !== this.isSlow) this.#turn();
    }
    this.#average(elapsed, done * period);
    return this.#due >= 1;
  }

  /** To slow motion, or back to the pace that was asked for. */
  #turn(): void {
    this.isSlow = !this.isSlow;
    // What is measured is the present pace, not a mean of both.
    this.lost = this.achieved = 0;
    if (this.isSlow) this.#due = 0;
  }

  /** Adds what has come due; a backlog beyond the bound is given up and reported. */
  #accrue(elapsed: number, period: number): void {
    const pace = this.isSlow ? slowPace(this.timeScale) : this.timeScale;
    if (!Number.isFinite(pace)) {
      this.#due = Number.POSITIVE_INFINITY;
      return;
    }
    this.#due += (elapsed * pace) / period;
    const max = (MAX_BACKLOG * pace) / period;
    if (this.#due > max) {
      this.lost += ((this.#due - max) * period) / pace;
      this.#due = max;
    }
  }

  #average(elapsed: number, simulated: number): void {
    if (elapsed <= 0) return;
    const weight = 1 - Math.exp(-elapsed / TIME_SCALE_MEMORY);
    this.achieved += weight * (simulated / elapsed - this.achieved);
  }
}
