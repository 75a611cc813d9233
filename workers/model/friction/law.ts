import type { Parameters } from '../../../shared/core/parameters/table.ts';

/**
 * How friction in the guide depends on sliding speed. Each law has one state of its own, the presliding displacement z, m. The size
 * of the dry friction (F_c, F_s) is the same for all laws; it is worked out in shared/axis/guide.ts.
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
