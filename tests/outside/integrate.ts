import { TickSolver } from '../../workers/solver/tickSolver.ts';

/** Integrates through `spans` restarts, as the axis does at every controller period. */
export function integrate(
  f: (y: number[], dy: number[]) => void,
  y0: number[],
  end: number,
  spans: number,
  tolerance: number,
): number[] {
  const n = y0.length;
  const tolerances = new Array<number>(n).fill(tolerance);
  const solver = new TickSolver((_x, y, dy) => f(y, dy), end / spans, tolerances, tolerances);
  const y = y0.slice();
  for (let i = 0; i < spans; i++) solver.advance(y, y);
  return y;
}
