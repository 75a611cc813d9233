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
  #last = 0;
  #silent = 0;
  #limit = MAX_STARTING;

  /** `ask` asks for a sign of life; `onSilence` hears once that none came. */
  constructor(ask: () => void, onSilence: () => void) {
    this.#ask = ask;
    this.#onSilence = onSilence;
  }

  /** From now on signs are due. */
  start(): void {
    if (this.#timer !== null) return;
    this.#silent = 0;
    this.#last = performance.now();
    this.#ask();
    this.#timer = setInterval(() => this.#look(), INTERVAL);
  }

  /** Nothing is due any more. */
  stop(): void {
    if (this.#timer !== null) clearInterval(this.#timer);
    this.#timer = null;
  }

  /** A message of whatever kind has come. */
  heard(): void {
    this.#silent = 0;
    this.#limit = MAX_SILENT;
  }

  #look(): void {
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
