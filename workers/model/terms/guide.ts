import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { FrictionLaw } from '../friction/law.ts';
import { FRICTION_LAWS, frictionLawOf } from '../friction/laws.ts';
import { E_GUIDE, F2, type State, V2, Z } from '../state.ts';
import type { Term } from '../term.ts';

/*
 * The guide of the table: F_guide by one of the laws in ../friction, under the load of shared/axis/guide.ts.
 * On the table −F_guide, heat F_guide v2. z, the deflection of what yields before the guide slides, is a state.
 */
export class Guide implements Term {
  #law: FrictionLaw = FRICTION_LAWS.viscous();

  configure(p: Parameters): void {
    this.#law = FRICTION_LAWS[frictionLawOf(p)]();
    this.#law.configure(p);
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const v2 = y[V2];
    this.#law.evaluate(v2, y[Z]);
    const { force } = this.#law;
    dy[F2] -= force;
    dy[E_GUIDE] += force * v2;
    dy[Z] = this.#law.deflectionRate;
  }

  /** Force that resists motion towards +x, N. */
  force(y: Readonly<State>): number {
    this.#law.evaluate(y[V2], y[Z]);
    return this.#law.force;
  }
}
