import { wornParameters } from '../../shared/axis/wear.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import {
  CURRENTS,
  clearEnergies,
  F1,
  F2,
  newState,
  type State,
  stateCount,
  type Temperatures,
  X1,
  X2,
  Z,
} from './state.ts';
import type { Store, Term } from './term.ts';
import { beginAll, contactsOf, evaluateAll, newTerms, storeAll, type Terms, warmAll } from './terms.ts';

/**
 * The right-hand side of the axis: what all its terms (terms.ts) do together. It has no physics of its own. Energies are integrated
 * beside the motion, for the audit.
 */
export class Plant {
  readonly size: number = 0;
  readonly motors: number = 0;
  readonly terms: Terms;
  readonly #list: readonly Term[];
  readonly #store: Store = { energy: 0 };
  /** Room for what comes as a plain list. */
  readonly #listed: State;
  readonly #slopes: State;

  /** @param modes how many flexible parts are switched on */
  constructor(motors: number, base: boolean, modes = 0) {
    this.motors = motors;
    this.size = stateCount(motors, base, modes);
    this.terms = newTerms(motors, base, modes);
    this.#listed = newState(this.size);
    this.#slopes = newState(this.size);
    this.#list = Object.values(this.terms);
  }

  /** Takes parameters and temperatures; everything the right-hand side needs is worked out here, once. */
  configure(p: Parameters, t: Temperatures): void {
    const worn = wornParameters(p);
    for (const term of this.#list) term.configure(worn);
    this.warm(t);
  }

  /**
   * Takes temperatures alone, as they move while it runs.
   * @returns true when that changed the energy stored
   */
  warm(t: Temperatures): boolean {
    return warmAll(this.terms, t);
  }

  /** A period begins in the state y. Results stay what they are without it, to rounding, and take longer. */
  begin(y: Readonly<State>): void {
    beginAll(this.terms, y);
  }

  /** At rest at position x: no currents, bristles relaxed, base where its mounts carry the weight, flexible parts unsprung. */
  initialState(x: number): State {
    const { base, modes, weight } = this.terms;
    const y = newState(this.size);
    y[X1] = x;
    y[X2] = x;
    if (base.moves) base.place(y, -weight.total / base.stiffness);
    modes.place(y, x);
    return y;
  }

  /** dy/dt, written in place. */
  readonly derivative = (_time: number, y: Readonly<State>, dy: State): void => {
    dy[F1] = 0;
    dy[F2] = 0;
    clearEnergies(dy);
    evaluateAll(this.terms, y, dy);
  };

  /** The same for plain lists, which general mathematics takes; what follows the states in them is left alone. */
  readonly listDerivative = (time: number, values: readonly number[], out: number[]): void => {
    const y = this.#listed;
    const dy = this.#slopes;
    const { length } = y;
    for (let k = 0; k <= Z; k++) y[k] = values[k] as number;
    // No rate depends on the energies between.
    for (let k = CURRENTS; k < length; k++) y[k] = values[k] as number;
    this.derivative(time, y, dy);
    for (let k = 0; k < length; k++) out[k] = dy[k] as number;
  };

  /** Which contacts are closed: a number that changes where the derivative jumps or has a kink. */
  contacts(y: Readonly<State>): number {
    return contactsOf(this.terms, y);
  }

  /** Energy stored in coils, motion, link, detents, buffers, height and mounts, J. */
  storedEnergy(y: Readonly<State>): number {
    this.storeInto(y, this.#store);
    return this.#store.energy;
  }

  /** The same into an object, for each period: a number that a call returns is put on the heap. */
  storeInto(y: Readonly<State>, store: Store): void {
    store.energy = 0;
    storeAll(this.terms, y, store);
  }
}
