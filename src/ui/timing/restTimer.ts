/**
 * Calls back once there has been a rest of so many ms. A timer that rings meanwhile is set anew, not with each touch: a slider that is
 * dragged touches with every refresh, and ending a timer costs the browser more than letting it ring.
 */
export class RestTimer {
  readonly #rest: number;
  readonly #onRest: () => void;
  #timer: ReturnType<typeof setTimeout> | null = null;
  #restAt = 0;

  constructor(rest: number, onRest: () => void) {
    this.#rest = rest;
    this.#onRest = onRest;
  }

  /** Whether it is to call back. */
  get isDue(): boolean {
    return this.#timer !== null;
  }

  /** The rest begins anew. */
  touch(): void {
    this.#restAt = performance.now() + this.#rest;
    this.#timer ??= setTimeout(() => this.#ring(), this.#rest);
  }

  cancel(): void {
    if (this.#timer !== null) clearTimeout(this.#timer);
    this.#timer = null;
  }

  #ring(): void {
    const left = this.#restAt - performance.now();
    this.#timer = left > 0 ? setTimeout(() => this.#ring(), left) : null;
    if (this.#timer === null) this.#onRest();
  }
}
