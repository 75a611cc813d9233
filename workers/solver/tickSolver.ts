import { type Derivative, Solver } from 'odex';

/** The solver could not carry the state over the span: the model has left what can be computed. */
export class DivergedError extends Error {}

const MAX_STEPS = 400;

/**
 * Integrates an autonomous system over one controller period with odex (extrapolated midpoint rule of Gragg, Bulirsch and Stoer
 * with order and step control: Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, sec. II.9), restarted at each call.
 *
 * odex halves a bounded span before its first step. Most periods need no second step, so the first is tried unbounded,
 * over the whole span; only when the error control shortens it is the rest integrated up to a bound.
 */
export class TickSolver<Y extends number[]> {
  readonly #solver: Solver<Y>;
  readonly #span: number;

  /**
   * @param f writes dy/dt in place
   * @param span length of one period, s
   * @param relative relative tolerance of each component
   * @param absolute absolute tolerance of each component
   */
  constructor(f: Derivative<Y>, span: number, relative: number[], absolute: number[]) {
    this.#span = span;
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
   * Carries y over one span, in place.
   * @throws DivergedError when the result is not finite or the step budget is spent
   */
  advance(y: Y): void {
    let reached = 0;
    try {
      // Not a loop that is left after one round: to close what is iterated takes time.
      const { value: first } = this.#solver.solutionSegments(0, y).next();
      if (first) {
        reached = first.x1;
        copy(first.y, y);
      }
      if (reached < this.#span) {
        for (const segment of this.#solver.solutionSegments(reached, y, this.#span)) copy(segment.y, y);
      }
    } catch (error) {
      throw new DivergedError(error instanceof Error ? error.message : String(error));
    }
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
