import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { tripText } from '../../shared/figures/tripText.ts';
import type { TestResult } from '../../shared/protocol/accuracy.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import { Axis, type AxisStart } from '../run/axis.ts';
import { tripOf } from '../run/tripOf.ts';
import { batchSolver } from '../solver/engine.ts';

/** The drive tripped during a test. */
export class TrippedError extends Error {
  constructor(readonly trip: Trip) {
    super(tripText(trip, 'SI'));
  }
}

/** The result of a test, or why the drive tripped. */
export function tested<T>(test: () => TestResult<T>): TestResult<T> {
  try {
    return test();
  } catch (error) {
    if (error instanceof TrippedError) return { trip: error.trip };
    throw error;
  }
}

/**
 * The axis counts as settled once its error has stayed within the window for the first time, s; the
 * second is the longest wait.
 */
const SETTLED = 0.05;
const LONGEST_WAIT = 1;

/**
 * An axis under test: it holds its position until it is sent somewhere, and no process acts on it,
 * as in the acceptance test of a machine. Ends with a TrippedError when the drive trips; see
 * `tested`.
 */
export class TestAxis {
  /** Of one position-loop sample, s. */
  readonly period: number;
  readonly #axis: Axis;

  /** @param place initial position, m */
  constructor(scene: Scene, place: number, changes: ParameterChanges = {}, start: AxisStart = {}) {
    const { parameters: p } = scene;
    this.period = p.positionDivider / p.currentRate;
    this.#axis = new Axis(
      {
        ...scene,
        moves: [],
        parameters: { ...p, ...changes, program: 'hold', process: 'none', start: place },
      },
      { ...start, solver: batchSolver },
    );
  }

  /** As `Axis.motion`. */
  get motion(): Float64Array {
    return this.#axis.motion;
  }

  get parameters(): Readonly<Parameters> {
    return this.#axis.parameters;
  }

  get moving(): boolean {
    return this.#axis.set.moving;
  }

  /** Position of the tool at the last sample, m. */
  get tool(): number {
    return this.#axis.set.position - valueAt(this.motion, C.toolError);
  }

  /** Advances to the next sample of the position loop: `motion` is that of its instant. */
  sample(): void {
    this.#toSample();
    this.#step();
  }

  change(changes: ParameterChanges): void {
    this.#toSample();
    this.#axis.change(changes);
  }

  /**
   * Moves to a position, m, under the limits of the scene; `watch` is called at every sample of the
   * move.
   */
  goTo(place: number, watch: () => void = () => {}): void {
    this.change({ start: place });
    do {
      this.sample();
      watch();
    } while (this.moving);
  }

  /** Waits until the following error has settled into the window. */
  settle(): void {
    const { window } = this.parameters;
    const longest = Math.round(LONGEST_WAIT / this.period);
    const enough = Math.round(SETTLED / this.period);
    for (let k = 0, inside = 0; k < longest && inside < enough; k++) {
      this.sample();
      inside = Math.abs(valueAt(this.motion, C.followingError)) <= window ? inside + 1 : 0;
    }
  }

  /** Holds the position for this time, s; `watch` is called at every sample. */
  stand(seconds: number, watch: () => void = () => {}): void {
    for (let k = Math.max(Math.round(seconds / this.period), 1); k > 0; k--) {
      this.sample();
      watch();
    }
  }

  /** Position of the tool over this time, s: mean, and rms about it, m. */
  look(seconds: number): { readonly mean: number; readonly jitter: number } {
    // Relative to the first position, which is close to all others: squares of absolute positions
    // would cancel.
    let [origin, sum, squares, count] = [0, 0, 0, 0];
    this.stand(seconds, () => {
      if (count++ === 0) origin = this.tool;
      const off = this.tool - origin;
      sum += off;
      squares += off * off;
    });
    const mean = sum / count;
    return { mean: origin + mean, jitter: Math.sqrt(Math.max(squares / count - mean * mean, 0)) };
  }

  #toSample(): void {
    while (!this.#axis.atPositionSample) this.#step();
  }

  #step(): void {
    if (!this.#axis.step()) throw new TrippedError(tripOf(this.#axis));
  }
}
