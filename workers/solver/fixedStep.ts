import { valueAt } from '../../shared/core/at.ts';
import type { Plant } from '../model/plant.ts';
import {
  CURRENTS,
  E_COPPER,
  E_GUIDE,
  E_IN,
  E_IRON,
  E_NUT,
  E_OTHER,
  E_OUT,
  newState,
  type State,
  V1,
  V2,
  X1,
  X2,
  Z,
} from '../model/state.ts';
import type { Store } from '../model/term.ts';
import { DivergedError } from './tickSolver.ts';

/** A step across the edge of a contact is halved down to this share of its length. */
const SHORTEST_SHARE = 2 ** -20;
/** Parts that are tried within one step before a contact that chatters is taken as it comes. */
const MOST_TRIED = 100;

/** Share of what went through, that of the tick or of late, by which the energy account of a tick may be off. */
const ENERGY_BOUND = 4e-9;
/** And in any case J, and roundings of the stored energy. */
const ENERGY_FLOOR = 1e-14;
const ROUNDINGS = 4 * Number.EPSILON;
/** What counts as of late is a mean that forgets this share a tick. */
const FORGETTING = 1 / 16;
/** Halved steps have a thirty-second of the error; they become longer again where that leaves a margin of two. */
const MARGIN = 64;

/**
 * Carries the plant over one period of the controller in equal steps of the classical Runge-Kutta rule of fourth order, and allocates
 * nothing while it runs. The least number of steps follows from the parameters (stepCount.ts). The energy account is the estimate of the
 * error, and comes for nothing: a tick in which it is off by more than its bound is done again in halved steps.
 *
 * Where a contact closes or opens, the force jumps. A step across such an edge is halved until what lies across it is a millionth.
 *
 * Source: Kutta 1901; Hairer, Nørsett, Wanner, Solving Ordinary Differential Equations I, sec. II.1.
 */
export class FixedStepSolver {
  readonly engine = 'batch';
  readonly #plant: Plant;
  readonly #span: number = 0;
  readonly #fewest: number = 0;
  readonly #most: number = 0;
  #steps = 0;
  /** Length of the step under way, s. A field, since a number handed to a function is put on the heap. */
  #h = 0;
  /** J a tick, of late. */
  #throughput = 0;
  /** The four rates, and the state at which one is evaluated; its energies are not used. */
  readonly #stages: Readonly<Record<'k1' | 'k2' | 'k3' | 'k4' | 'stage', State>>;
  /** Ends of steps, in turn, and of the parts of a step. */
  readonly #even: State;
  readonly #odd: State;
  readonly #beyond: State;

  /**
   * @param span length of one period, s
   * @param fewest how many steps of equal length make up a period at least, and at most
   */
  constructor(plant: Plant, span: number, [fewest, most]: readonly [number, number]) {
    this.#plant = plant;
    this.#span = span;
    this.#fewest = fewest;
    this.#most = most;
    this.#steps = fewest;
    const room = () => newState(plant.size);
    this.#stages = { k1: room(), k2: room(), k3: room(), k4: room(), stage: room() };
    this.#even = room();
    this.#odd = room();
    this.#beyond = room();
  }

  /**
   * Fills `end` with what `from` comes to over one period.
   *
   * @param store energy stored in `from`; when it returns, that in `end`
   * @throws DivergedError when the result is not finite
   */
  advance(from: Readonly<State>, end: State, store: Store): void {
    const stored = store.energy;
    for (;;) {
      this.#tryTick(from, end);
      this.#plant.storeInto(end, store);
      const after = store.energy;
      const passed = Math.abs(end[E_IN]) + Math.abs(end[E_OUT]) + Math.abs(after - stored);
      const losses = end[E_COPPER] + end[E_IRON] + end[E_NUT] + end[E_GUIDE] + end[E_OTHER];
      const off = Math.abs(end[E_IN] - losses - end[E_OUT] - (after - stored));
      const floor = ENERGY_FLOOR + ROUNDINGS * Math.abs(after);
      const bound = ENERGY_BOUND * Math.max(passed, this.#throughput) + floor;
      // A state that is not finite leaves its mark in the account.
      if (!(bound < Number.POSITIVE_INFINITY)) checkFinite(end);
      if (off <= bound || this.#steps === this.#most) {
        if (off * MARGIN < bound && this.#steps > this.#fewest)
          this.#steps = Math.max(this.#steps >> 1, this.#fewest);
        this.#throughput += FORGETTING * (passed - this.#throughput);
        return;
      }
      this.#steps = Math.min(2 * this.#steps, this.#most);
    }
  }

  #tryTick(start: Readonly<State>, end: State): void {
    const steps = this.#steps;
    this.#h = this.#span / steps;
    let from = start;
    for (let left = steps - 1; left >= 0; left--) {
      const to = left === 0 ? end : left % 2 === 0 ? this.#even : this.#odd;
      this.#tryStep(from, to);
      if (this.#plant.contacts(to) !== this.#plant.contacts(from)) {
        copy(from, to);
        this.#acrossContact(to);
      }
      from = to;
    }
  }

  /** The step under way, during which contacts close or open, in parts and in place. */
  #acrossContact(y: State): void {
    const step = this.#h;
    const shortest = step * SHORTEST_SHARE;
    let part = step / 2;
    let left = step;
    for (let tried = 0; left > 0; tried++) {
      const contacts = this.#plant.contacts(y);
      this.#h = part;
      this.#tryStep(y, this.#beyond);
      const crosses = this.#plant.contacts(this.#beyond) !== contacts;
      if (crosses && part > shortest && tried < MOST_TRIED) {
        part /= 2;
        continue;
      }
      copy(this.#beyond, y);
      left -= part;
      part = Math.min(2 * part, left);
    }
    this.#h = step;
  }

  #tryStep(from: Readonly<State>, to: State): void {
    const plant = this.#plant;
    const h = this.#h;
    const { k1, k2, k3, k4, stage } = this.#stages;
    const { length } = stage;
    // One place for all four evaluations: the engine compiles what it calls into it once, and so wholly.
    for (let n = 0; ; n++) {
      const k = n === 0 ? k1 : n === 1 ? k2 : n === 2 ? k3 : k4;
      plant.derivative(0, n === 0 ? from : stage, k);
      if (n === 3) break;
      const ahead = h * (n < 2 ? 0.5 : 1);
      stage[X1] = from[X1] + ahead * k[X1];
      stage[V1] = from[V1] + ahead * k[V1];
      stage[X2] = from[X2] + ahead * k[X2];
      stage[V2] = from[V2] + ahead * k[V2];
      stage[Z] = from[Z] + ahead * k[Z];
      // The condition at the end, here and in what this calls: of a loop that may be passed over the engine
      // makes two copies, and what runs at every period should fit the processor's cache.
      let i: number = CURRENTS;
      do stage[i] = valueAt(from, i) + ahead * valueAt(k, i);
      while (++i < length);
    }
    const sixth = h / 6;
    let i = 0;
    do {
      const inner = valueAt(k2, i) + valueAt(k3, i);
      to[i] = valueAt(from, i) + sixth * (valueAt(k1, i) + 2 * inner + valueAt(k4, i));
    } while (++i < length);
  }
}

/** A loop, since the engine's own copying takes longer for so few. */
function copy(from: Readonly<State>, to: State): void {
  for (let i = 0; i < to.length; i++) to[i] = valueAt(from, i);
}

/** @throws DivergedError naming the first state that is not finite */
function checkFinite(y: Readonly<State>): void {
  const index = y.findIndex((value) => !Number.isFinite(value));
  if (index >= 0) throw new DivergedError(`state ${index} is no longer finite`);
}
