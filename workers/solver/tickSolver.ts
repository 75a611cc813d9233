import { type Derivative, Solver } from 'odex';

/** The solver could not carry the state over the span: the model has left what can be computed. */
export class DivergedError extends Error {}

const MAX_STEPS = 400;

interface Vector {
  readonly length: number;
  [index: number]: number;
}

/**
 * Integrates an autonomous system over one controller period with odex (extrapolated midpoint rule of Gragg, Bulirsch and Stoer
 * with order and step control: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, sec. II.9), restarted at each call.
 *
 * odex halves a bounded span before its first step. Most periods need no second step, so the first is tried unbounded,
 * over the whole span; only when the error control shortens it is the rest integrated up to a bound.
 */
export class TickSolver {
  readonly #solver: Solver<number[]>;
  readonly #span: number;
  /** The vector as odex wants it. */
  readonly #list: number[];

  /**
   * @param f writes dy/dt in place
   * @param span length of one period, s
   * @param relative relative tolerance of each component
   * @param absolute absolute tolerance of each component
   */
  constructor(f: Derivative<number[]>, span: number, relative: number[], absolute: number[]) {
    this.#span = span;
    this.#list = new Array<number>(relative.length).fill(0.5);
    this.#solver = new Solver(f, relative.length, {
      rawFunction: true,
      denseOutput: false,
      initialStepSize: span,
      maxStepSize: span,
      maxSteps: MAX_STEPS,
      // At rest the derivative is rounding noise, which this check would take for instability and answer with tiny steps.
      stabilityCheckCount: 0,
      relativeTolerance: relative,
      absoluteTolerance: absolute,
    });
  }

  /**
   * Fills `to` with what `from` comes to over one span; they may be one.
   * @throws DivergedError when the result is not finite or the step budget is spent
   */
  advance(from: Readonly<Vector>, to: Vector): void {
    const list = this.#list;
    for (let i = 0; i < list.length; i++) list[i] = from[i] ?? Number.NaN;
    let reached = 0;
    try {
      // Not a loop that is left after one round: to close what is iterated takes time.
      const { value: first } = this.#solver.solutionSegments(0, list).next();
      if (first) {
        reached = first.x1;
        copy(first.y, list);
      }
      if (reached < this.#span) {
        for (const segment of this.#solver.solutionSegments(reached, list, this.#span)) copy(segment.y, list);
      }
    } catch (error) {
      throw new DivergedError(error instanceof Error ? error.message : String(error));
    }
    for (let i = 0; i < list.length; i++) to[i] = list[i] ?? Number.NaN;
  }
}

function copy(from: readonly number[], to: number[]): void {
  for (let i = 0; i < to.length; i++) {
    const value = from[i];
    if (value === undefined || !Number.isFinite(value))
      throw new DivergedError(`state ${i} is no longer finite`);
    to[i] = value;
  }
}
