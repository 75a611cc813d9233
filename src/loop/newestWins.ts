/**
 * Work that takes a while, on inputs that may come faster: one piece is under way, and of those that come meanwhile only the newest
 * waits. So an answer is never older than one piece of work, and no slider can build up a queue.
 */
export class NewestWins<In, Out> {
  #busy = false;
  #waiting: { readonly input: In } | null = null;
  readonly #work: (input: In) => Promise<Out>;
  readonly #done: (output: Out, input: In) => void;
  readonly #failed: (error: unknown, input: In) => void;

  constructor(
    work: (input: In) => Promise<Out>,
    done: (output: Out, input: In) => void,
    failed: (error: unknown, input: In) => void,
  ) {
    this.#work = work;
    this.#done = done;
    this.#failed = failed;
  }

  /** Whether an answer is still to come. */
  get busy(): boolean {
    return this.#busy;
  }

  ask(input: In): void {
    if (this.#busy) this.#waiting = { input };
    else void this.#begin(input);
  }

  async #begin(input: In): Promise<void> {
    this.#busy = true;
    let answer: () => void;
    try {
      const output = await this.#work(input);
      answer = () => this.#done(output, input);
    } catch (error) {
      answer = () => this.#failed(error, input);
    }
    this.#busy = false;
    const next = this.#waiting;
    this.#waiting = null;
    // The next piece is sent off before the answer is drawn: both go on at the same time.
    if (next) this.ask(next.input);
    answer();
  }
}
