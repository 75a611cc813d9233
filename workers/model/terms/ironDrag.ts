import { DRAG_REVERSAL, type Drag, ironDrag, NO_DRAG } from '../../../shared/axis/drag.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { E_IRON, F1, type State, V1 } from '../state.ts';
import type { Term } from '../term.ts';

/*
 * Eddy currents and hysteresis in the iron of the motors, against the motion of the coil unit:
 *
 *   F_iron = N (c_e v1 + F_h tanh(v1/v_h))        on the motor −F_iron, heat F_iron v1 in the iron
 *
 * N, m/s. Source: power lost to eddy currents grows with the square of the frequency, to hysteresis in proportion to it
 * (Fitzgerald, Kingsley, Umans, Electric Machinery, 6th ed. 2003, sec. 1.4).
 */
export class IronDrag implements Term {
  acts = false;
  drag: Drag = NO_DRAG;

  configure(p: Parameters): void {
    this.drag = ironDrag(p);
    this.acts = this.drag.dry > 0 || this.drag.viscous > 0;
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const v1 = y[V1];
    const force = this.drag.viscous * v1 + this.drag.dry * Math.tanh(v1 / DRAG_REVERSAL);
    dy[F1] -= force;
    dy[E_IRON] += force * v1;
  }
}
