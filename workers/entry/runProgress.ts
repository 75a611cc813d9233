import { stderr } from 'node:process';

/** Runs shorter than this are done before anyone would look, s of simulated time. */
const LONG = 20;
/** Between two lines, s of simulated time. */
const STEP = 10;

/** How far a long run is, in a line on the terminal that is overwritten; nothing where the output is not one. */
export class RunProgress {
  readonly #seconds: number;
  readonly #isShown: boolean;
  #next = STEP;

  constructor(seconds: number) {
    this.#seconds = seconds;
    this.#isShown = seconds >= LONG && stderr.isTTY === true;
  }

  take(time: number): void {
    if (!this.#isShown || time < this.#next) return;
    this.#next += STEP;
    stderr.write(`\rSimulated ${time.toFixed(0)} of ${this.#seconds} s`);
  }

  end(): void {
    if (this.#isShown) stderr.write('\r\u001b[K');
  }
}
