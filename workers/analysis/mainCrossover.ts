import { feedbackWeights } from '../../shared/axis/loop/feedback.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';

/** Between the corner a/c, Kp/Kd of a PID, where the lead of a controller begins, and its crossover. Common practice: one over two to three. */
const LEAD = 2.5;

/**
 * The crossover that the controller was made for, Hz: of those where |L| falls through 1, ascending, the one nearest to where its lead is.
 * Others belong to a resonance, or to an integrator against a stiff guide. Null when there is none.
 */
export function mainCrossover(p: Parameters, falls: readonly number[]): number | null {
  const { error, speedIntegral, speed } = feedbackWeights(p);
  const lead = (LEAD * (error + speedIntegral)) / speed / (2 * Math.PI);
  if (!(lead > 0 && lead < Number.POSITIVE_INFINITY)) return falls.at(-1) ?? null;
  const distance = (f: number) => Math.abs(Math.log(f / lead));
  return falls.reduce<number | null>(
    (best, f) => (best === null || distance(f) < distance(best) ? f : best),
    null,
  );
}
