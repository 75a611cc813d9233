interface Step<Value> {
  readonly value: Value;
  /** What the step did, in words. */
  readonly text: string;
  /** Steps of one gesture, e.g. one drag of a slider, count as one. */
  readonly gesture: string | null;
}

/** A value with the steps before it, the oldest first, and those undone, the last undone last: plain data. */
export interface Timeline<Value> {
  readonly past: readonly Step<Value>[];
  readonly present: Step<Value>;
  readonly future: readonly Step<Value>[];
}

const DEPTH = 500;

/** A value that is never changed in place, with its past and its undone future. */
export class UndoHistory<Value> {
  #past: Step<Value>[] = [];
  #present: Step<Value>;
  #future: Step<Value>[] = [];

  constructor(value: Value) {
    this.#present = { value, text: '', gesture: null };
  }

  get present(): Value {
    return this.#present.value;
  }

  /** What Undo would take back and Redo bring again, in words, or null. */
  get undoText(): string | null {
    return this.#past.length > 0 ? this.#present.text : null;
  }

  get redoText(): string | null {
    return this.#future.at(-1)?.text ?? null;
  }

  /** The value with at most so many steps before and after it. */
  timeline(depth: number): Timeline<Value> {
    return { past: this.#past.slice(-depth), present: this.#present, future: this.#future.slice(-depth) };
  }

  /** Goes on from a timeline, in place of what was here. */
  restore({ past, present, future }: Timeline<Value>): void {
    this.#past = [...past];
    this.#present = present;
    this.#future = [...future];
  }

  /** Another value, as one step or as part of a gesture. What was undone is forgotten. */
  advance(value: Value, text = '', gesture: string | null = null): void {
    const continues = gesture !== null && gesture === this.#present.gesture && this.#future.length === 0;
    if (!continues) this.#past = [...this.#past, this.#present].slice(-DEPTH);
    this.#future = [];
    this.#present = { value, text, gesture };
  }

  /** What follows from the present value by itself: no step of its own. */
  amend(value: Value): void {
    this.#present = { ...this.#present, value };
  }

  /** Returns whether there was anything to undo. */
  undo(): boolean {
    const step = this.#past.pop();
    if (!step) return false;
    this.#future.push(this.#present);
    this.#present = step;
    return true;
  }

  /** Returns whether there was anything to redo. */
  redo(): boolean {
    const step = this.#future.pop();
    if (!step) return false;
    this.#past.push(this.#present);
    this.#present = step;
    return true;
  }
}
