import type { Parameters } from '../../../shared/core/parameters/table.ts';

/** A structure of the position loop: what makes a force of position error and speeds, once per sample. */
export interface Feedback {
  configure(p: Parameters, period: number): void;
  /** Starts afresh with this force in the integrator, N: what the structure before it gave, or 0. */
  start(force: number): void;
  /**
   * Force of the feedback, N.
   *
   * @param error of position, m
   * @param setSpeed commanded speed, m/s, delayed by as much as the measured one
   * @param speedEstimate measured speed, m/s
   */
  step(error: number, setSpeed: number, speedEstimate: number): number;
  /** Undoes the last step of the integrator if it drives further into the limit that `wanted` (in any unit) exceeds. */
  holdIntegral(wanted: number): void;
}
