/** Between two looks, ms. */
const INTERVAL = 200;
/** A look that comes later than this, ms, says that the page itself was held up or put to sleep: it counts for nothing. */
const LATE = 2 * INTERVAL;
/** Looks without a sign of life after which a worker is given up: under two seconds. */
const MAX_SILENT = 8;
/** As long as its script is still on the way: half a minute. */
const MAX_STARTING = 150;

/**
 * Tells a worker that is stuck from one that is slow. Counted are looks of a page that is awake, not time: in a tab in the
 * background, behind a stalled page and on a machine that slept, every look is late, and nobody is accused.
 */
export class Watchdog {
  readonly #ask: () => void;
  readonly #onSilence: () => void;
  #timer: ReturnType<typeof setInterval> | null = null;
  #isDue = false;
  #last = 0;
  #silent = 0;
  #limit = MAX_STARTING;

  /** `ask` asks for a sign of life; `onSilence` hears once that none came. */
  constructor(ask: () => void, onSilence: () => void) {
    this.#ask = ask;
    this.#onSilence = onSilence;
  }

  /** From now on signs are due. Answers mostly come before the first look: nothing more is asked of the worker then. */
  start(): void {
    if (this.#isDue) return;
    this.#isDue = true;
    this.#silent = 0;
    if (this.#timer !== null) return;
    this.#last = performance.now();
    this.#timer = setInterval(() => this.#look(), INTERVAL);
  }

  /** Nothing is due for now. The next look ends the looking, unless something is due again: a timer for each answer would cost more. */
  pause(): void {
    this.#isDue = false;
  }

  /** Nothing will be due any more. */
  stop(): void {
    this.#isDue = false;
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#timer = null;
  }

  /** A message of whatever kind has come. */
  heard(): void {
    this.#silent = 0;
    this.#limit = MAX_SILENT;
  }

  #look(): void {
    if (!this.#isDue) {
      this.stop();
      return;
    }
    const now = performance.now();
    const isLate = now - this.#last > LATE;
    this.#last = now;
    if (!isLate) this.#silent++;
    if (this.#silent < this.#limit) {
      this.#ask();
      return;
    }
    this.stop();
    this.#onSilence();
  }
}
