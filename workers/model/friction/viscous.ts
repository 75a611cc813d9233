import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { FrictionLaw } from './law.ts';

/* An air bearing: F = σ2 v, with no dry friction and so with nothing that yields. N, m/s. */
export class ViscousFriction implements FrictionLaw {
  force = 0;
  readonly deflectionRate = 0;
  #sigma2 = 0;

  configure(p: Parameters): void {
    this.#sigma2 = p.viscous;
  }

  evaluate(v: number): void {
    this.force = this.#sigma2 * v;
  }
}
