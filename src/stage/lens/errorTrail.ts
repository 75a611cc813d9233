import { valueAt } from '../../../shared/core/at.ts';

/** What the error was over the last while of simulated time: a ring that the magnifier draws as an afterglow. */
export class ErrorTrail {
  readonly #times: Float64Array;
  readonly #errors: Float64Array;
  #head = 0;
  #held = 0;
  readonly #span: number;
  readonly #capacity: number;

  /** `span` in seconds; at most `capacity` samples are kept, evenly over the span. */
  constructor(span: number, capacity = 240) {
    this.#span = span;
    this.#capacity = capacity;
    this.#times = new Float64Array(capacity);
    this.#errors = new Float64Array(capacity);
  }

  /** Returns whether anything was added. Time that runs backwards is another run: the trail starts anew. */
  push(time: number, error: number): boolean {
    if (this.#held > 0) {
      const newest = valueAt(this.#times, this.#index(0));
      if (time < newest) this.#held = 0;
      else if (time - newest < this.#span / this.#capacity) return false;
    }
    this.#head = (this.#head + 1) % this.#capacity;
    this.#times[this.#head] = time;
    this.#errors[this.#head] = error;
    this.#held = Math.min(this.#held + 1, this.#capacity);
    return true;
  }

  /** Calls back from the newest sample to the oldest within the span. */
  each(now: number, visit: (age: number, error: number) => void): void {
    for (let i = 0; i < this.#held; i++) {
      const at = this.#index(i);
      const age = now - valueAt(this.#times, at);
      if (age > this.#span) return;
      visit(age, valueAt(this.#errors, at));
    }
  }

  #index(back: number): number {
    return (this.#head - back + this.#capacity) % this.#capacity;
  }
}
