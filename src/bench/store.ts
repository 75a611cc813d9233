import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import { type Bench, withChanges } from './bench.ts';

/** Called after every change; `was` is the bench before it. */
export type Subscriber = (is: Bench, was: Bench) => void;

interface Step {
  readonly bench: Bench;
  /** What the step did, e.g. for the tooltip of Undo; steps of one gesture (one drag of a slider) count as one. */
  readonly text: string;
  readonly gesture: string | null;
}

const DEPTH = 500;

/**
 * The one place where the set-up of the axis is kept, with its past and its undone future. Values must be checked
 * before they come here.
 */
export class Store {
  #past: Step[] = [];
  #future: Step[] = [];
  #present: Step;
  readonly #subscribers = new Set<Subscriber>();

  constructor(bench: Bench) {
    this.#present = { bench, text: '', gesture: null };
  }

  get bench(): Bench {
    return this.#present.bench;
  }

  /** What Undo would take back and Redo bring again, in words, or null. */
  get undoText(): string | null {
    return this.#past.length > 0 ? this.#present.text : null;
  }

  get redoText(): string | null {
    return this.#future.at(-1)?.text ?? null;
  }

  /** Whether anything is otherwise now. */
  change(changes: ParameterChanges, text: string, gesture: string | null = null): boolean {
    const bench = withChanges(this.bench, changes);
    if (bench === this.bench) return false;
    this.#advance({ bench, text, gesture });
    return true;
  }

  /** Puts something else on the bench, as one step. */
  replace(bench: Bench, text: string): void {
    this.#advance({ bench, text, gesture: null });
  }

  undo(): void {
    const step = this.#past.pop();
    if (!step) return;
    this.#future.push(this.#present);
    this.#become(step);
  }

  redo(): void {
    const step = this.#future.pop();
    if (!step) return;
    this.#past.push(this.#present);
    this.#become(step);
  }

  /** Returns what ends the subscription. */
  subscribe(subscriber: Subscriber): () => void {
    this.#subscribers.add(subscriber);
    return () => this.#subscribers.delete(subscriber);
  }

  #advance(step: Step): void {
    const continues =
      step.gesture !== null && step.gesture === this.#present.gesture && this.#future.length === 0;
    if (!continues) this.#past = [...this.#past, this.#present].slice(-DEPTH);
    this.#future = [];
    this.#become(step);
  }

  #become(step: Step): void {
    const was = this.bench;
    this.#present = step;
    for (const subscriber of this.#subscribers) subscriber(step.bench, was);
  }
}
