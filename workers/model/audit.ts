import type { Losses } from './heat.ts';
import {
  clearEnergies,
  E_COPPER,
  E_GUIDE,
  E_IN,
  E_IRON,
  E_NUT,
  E_OTHER,
  E_OUT,
  type State,
} from './state.ts';
import type { Store } from './term.ts';

/** The residual may be this share of the throughput, and a nanojoule in any case: steps of 0.1 nm move hardly more. */
const RESIDUAL_BOUND = 1e-6;
const RESIDUAL_FLOOR = 1e-9;

/**
 * Energy account of a run, J: in + set = losses + out + change of stored energy. `set` is what changes of parameters and
 * temperatures put into the stored energy. Nothing is fitted: what does not balance shows in `residual`.
 */
export class Audit {
  in = 0;
  /** Part of `in` that was negative: what braking gave back to the amplifier, by the net of each tick. */
  returned = 0;
  copper = 0;
  iron = 0;
  nut = 0;
  guide = 0;
  other = 0;
  out = 0;
  set = 0;
  /** Sum of what went through, whichever way, tick by tick. */
  throughput = 0;

  readonly #storedAtStart: number = 0;
  #stored = 0;
  readonly #taken: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };
  readonly #heat: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };

  constructor(storedAtStart: number) {
    this.#storedAtStart = storedAtStart;
    this.#stored = storedAtStart;
  }

  /** Takes the energies of one tick out of the state vector, which continues from zero; `energy` is stored at its end. */
  takeTick(y: State, { energy: stored }: Readonly<Store>): void {
    this.in += y[E_IN];
    this.returned += Math.max(-y[E_IN], 0);
    this.copper += y[E_COPPER];
    this.iron += y[E_IRON];
    this.nut += y[E_NUT];
    this.guide += y[E_GUIDE];
    this.other += y[E_OTHER];
    this.out += y[E_OUT];
    this.throughput += Math.abs(y[E_IN]) + Math.abs(y[E_OUT]) + Math.abs(stored - this.#stored);
    clearEnergies(y);
    this.#stored = stored;
  }

  /** Heat given off since the last call, J, for the network that takes it up. The object is filled anew by the next call. */
  takeHeat(): Readonly<Losses> {
    const heat = this.#heat;
    const taken = this.#taken;
    heat.copper = this.copper - taken.copper;
    heat.iron = this.iron - taken.iron;
    heat.guide = this.guide - taken.guide;
    heat.nut = this.nut - taken.nut;
    taken.copper = this.copper;
    taken.iron = this.iron;
    taken.guide = this.guide;
    taken.nut = this.nut;
    return heat;
  }

  /** Books a jump of the stored energy that no physical process made: a parameter or temperature was set. */
  bookSet(stored: number): void {
    this.set += stored - this.#stored;
    this.#stored = stored;
  }

  /** Energy stored now, J. */
  get stored(): number {
    return this.#stored;
  }

  /** Change of the stored energy since the start, J. */
  get storedChange(): number {
    return this.#stored - this.#storedAtStart;
  }

  /** What does not balance, J. */
  get residual(): number {
    const losses = this.copper + this.iron + this.nut + this.guide + this.other;
    return this.in + this.set - losses - this.out - this.storedChange;
  }

  /** Whether the residual is within its bound, of whatever went through, with a floor for runs in which next to nothing did. */
  get holds(): boolean {
    return Math.abs(this.residual) <= Math.max(RESIDUAL_BOUND * this.throughput, RESIDUAL_FLOOR);
  }

  /** Residual over throughput. */
  get relativeResidual(): number {
    return this.throughput > 0 ? this.residual / this.throughput : 0;
  }
}
