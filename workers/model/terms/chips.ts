import { bedKey, type ChipBed, chipBed, metBy } from '../../../shared/axis/chips/chipBed.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { SweptChips } from '../../../shared/core/sweptChips.ts';
import { E_OTHER, F1, type State, V1, X1 } from '../state.ts';
import type { Term } from '../term.ts';

/** Speed over which the friction of chips changes its sign, m/s. */
const REVERSAL = 2e-3;

/*
 * Friction of chips on open magnets against the motion of the coil unit; which brake is worked out at each period of the current loop:
 *
 *   F = (Σ jammed + Σ pushed by the end that leads, while it goes where it has not been) tanh(v1/v_c)
 *
 * on the motor −F, heat F v1. Single forces: shared/axis/chips/chipBed.ts, with their sources.
 */
export class Chips implements Term {
  acts = false;
  #bed: ChipBed | null = null;
  #poured = Number.NaN;
  #from = 0;
  #to = 0;
  #made = '';
  #pouredAs = '';
  /** Sums over the chips that were met, N. */
  #jammed = 0;
  #pushedUp = 0;
  #pushedDown = 0;
  #isNewAbove = false;
  #isNewBelow = false;

  configure(p: Parameters): void {
    const made = bedKey(p);
    const pouredAs = [p.chipCount, p.chipSize, p.cover].join(' ');
    if (made === this.#made) return;
    this.#made = made;
    this.#bed = chipBed(p);
    this.acts = this.#bed !== null;
    if (pouredAs !== this.#pouredAs) this.#poured = Number.NaN;
    this.#pouredAs = pouredAs;
    this.#add();
  }

  /** Takes the position of the unit for the next period. */
  hold(y: Readonly<State>): void {
    const x = y[X1];
    if (Number.isNaN(this.#poured)) {
      this.#poured = this.#from = this.#to = x;
      this.#add();
    }
    this.#isNewAbove = x >= this.#to;
    this.#isNewBelow = x <= this.#from;
    if (x > this.#to) this.#to = x;
    else if (x < this.#from) this.#from = x;
    else return;
    this.#add();
  }

  evaluate(y: Readonly<State>, dy: State): void {
    const v1 = y[V1];
    const force = this.#force(v1);
    dy[F1] -= force;
    dy[E_OTHER] += force * v1;
  }

  /** Null where no chips lie. */
  swept(y: Readonly<State>): SweptChips | null {
    if (!this.acts || Number.isNaN(this.#poured)) return null;
    return { poured: this.#poured, from: this.#from, to: this.#to, force: Math.abs(this.#force(y[V1])) };
  }

  #force(v1: number): number {
    const isUp = v1 > 0;
    const pushed = isUp ? (this.#isNewAbove ? this.#pushedUp : 0) : this.#isNewBelow ? this.#pushedDown : 0;
    return (this.#jammed + pushed) * Math.tanh(v1 / REVERSAL);
  }

  #add(): void {
    this.#jammed = this.#pushedUp = this.#pushedDown = 0;
    if (!this.#bed || Number.isNaN(this.#poured)) return;
    const { chips, magnets } = this.#bed;
    for (const { seat, of } of chips) {
      const met = metBy(seat, magnets.unitLength, this.#poured, this.#from, this.#to);
      if (of.fate === 'jams' && Math.abs(met) === 1) this.#jammed += of.drag;
      else if (of.fate === 'pushed' && met === 1) this.#pushedUp += of.drag;
      else if (of.fate === 'pushed' && met === -1) this.#pushedDown += of.drag;
    }
  }
}
