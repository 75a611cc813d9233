import type { ParameterChanges } from '../../shared/core/parameters/table.ts';
import { type Bench, withChanges } from './bench.ts';
import { type Timeline, UndoHistory } from './undo.ts';

/** Called after every change; `was` is the bench before it. */
type Subscriber = (is: Bench, was: Bench) => void;

/**
 * The one place where the set-up of the axis is kept, with its past and its undone future. Values must be checked
 * before they come here.
 */
export class Store {
  #history: UndoHistory<Bench>;
  /** That of the person, whatever is borrowed. */
  readonly #own: UndoHistory<Bench>;
  readonly #subscribers = new Set<Subscriber>();

  constructor(bench: Bench) {
    this.#own = new UndoHistory(bench);
    this.#history = this.#own;
  }

  get bench(): Bench {
    return this.#history.present;
  }

  /** What Undo would take back and Redo bring again, in words, or null. */
  get undoText(): string | null {
    return this.#history.undoText;
  }

  get redoText(): string | null {
    return this.#history.redoText;
  }

  /** Whether anything is otherwise now. Changes of one gesture (one drag of a slider) are one step. */
  change(changes: ParameterChanges, text: string, gesture: string | null = null): boolean {
    const was = this.bench;
    const is = withChanges(was, changes);
    if (is === was) return false;
    this.#history.advance(is, text, gesture);
    this.#tell(was);
    return true;
  }

  /** Puts something else on the bench, as one step. */
  replace(bench: Bench, text: string): void {
    const was = this.bench;
    this.#history.advance(bench, text);
    this.#tell(was);
  }

  /** Puts something else on the bench for a while, with a past of its own. Returns what brings this one back, its past included. */
  borrow(bench: Bench): () => void {
    const kept = this.#own;
    this.#change(new UndoHistory(bench));
    return () => this.#change(kept);
  }

  undo(): void {
    const was = this.bench;
    if (this.#history.undo()) this.#tell(was);
  }

  redo(): void {
    const was = this.bench;
    if (this.#history.redo()) this.#tell(was);
  }

  /** The bench with at most so many steps of its past and its undone future; while something else is borrowed, that which comes back. */
  timeline(depth: number): Timeline<Bench> {
    return this.#own.timeline(depth);
  }

  /** Goes on from where a timeline ends, with its steps. */
  restore(timeline: Timeline<Bench>): void {
    const was = this.bench;
    this.#history = this.#own;
    this.#history.restore(timeline);
    this.#tell(was);
  }

  /** Returns what ends the subscription. */
  subscribe(subscriber: Subscriber): () => void {
    this.#subscribers.add(subscriber);
    return () => this.#subscribers.delete(subscriber);
  }

  #change(history: UndoHistory<Bench>): void {
    const was = this.bench;
    this.#history = history;
    this.#tell(was);
  }

  #tell(was: Bench): void {
    for (const subscriber of this.#subscribers) subscriber(this.bench, was);
  }
}
