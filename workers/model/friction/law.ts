import type { Parameters } from '../../../shared/core/parameters/table.ts';

/**
 * How the guide turns sliding speed into a force. A law has one state of its own, the deflection z of what yields before the
 * guide slides, m. How large dry friction is (F_c, F_s) stands in shared/axis/guide.ts, for every law alike.
 */
export interface FrictionLaw {
  configure(p: Parameters): void;

  /** Sets the results below for a sliding speed v (m/s) and a deflection z (m). */
  evaluate(v: number, z: number): void;

  /** Force that resists v, N. */
  readonly force: number;
  /** dz/dt, m/s. */
  readonly deflectionRate: number;
}
