import { DRAG_REVERSAL, type Drag, NO_DRAG, nutDrag } from '../../../shared/axis/drag.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { E_NUT, F1, type State, V1 } from '../state.ts';
import type { Term } from '../term.ts';

/*
 * Nut and bearings of a screw, referred to the table, against the turning of the screw:
 *
 *   F_nut = F_n tanh(v1/v_h) + d_n v1             on the motor −F_nut, heat F_nut v1 in the screw
 *
 * N, m/s. Source: preload gives a drag that hangs on no load, grease one in proportion to speed (common practice).
 */
export class NutDrag implements Term {
  acts = false;
  drag: Drag = NO_DRAG;

  configure(p: Parameters): void {
    this.drag = nutDrag(p);
    this.acts = this.drag.dry > 0 || this.drag.viscous > 0;
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const v1 = y[V1];
    const force = this.drag.dry * Math.tanh(v1 / DRAG_REVERSAL) + this.drag.viscous * v1;
    dy[F1] -= force;
    dy[E_NUT] += force * v1;
  }
}
