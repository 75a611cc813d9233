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
  stateAt,
  Z,
} from '../model/state.ts';
import { DivergedError } from './tickSolver.ts';

/** A step across the edge of a contact is halved down to this share of its length. */
const SHORTEST_SHARE = 2 ** -20;
/** Parts that are tried within one step before a contact that chatters is taken as it comes. */
const MOST_TRIED = 100;

/** Share of what went through, that of the tick or of late, by which the energy account of a tick may be off. */
const ENERGY_BOUND = 4e-9;
/** And in any case J, and roundings of the stored energy. */
const ENERGY_FLOOR = 1e-15;
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
  readonly #size: number;
  readonly #span: number;
  readonly #fewest: number;
  readonly #most: number;
  #steps: number;
  /** J a tick, of late. */
  #throughput = 0;
  readonly #k1: State;
  readonly #k2: State;
  readonly #k3: State;
  readonly #k4: State;
  /** The state at which a stage is evaluated; its energies are not used. */
  readonly #stage: State;
  /** The end of the step, and the start of the tick. */
  readonly #end: State;
  readonly #start: State;

  /**
   * @param span length of one period, s
   * @param fewest how many steps of equal length make up a period at least, and at most
   */
  constructor(plant: Plant, span: number, [fewest, most]: readonly [number, number]) {
    this.#plant = plant;
    this.#size = plant.size;
    this.#span = span;
    this.#fewest = fewest;
    this.#most = most;
    this.#steps = fewest;
    this.#k1 = newState(plant.size);
    this.#k2 = newState(plant.size);
    this.#k3 = newState(plant.size);
    this.#k4 = newState(plant.size);
    this.#stage = newState(plant.size);
    this.#end = newState(plant.size);
    this.#start = newState(plant.size);
  }

  /**
   * Carries y over one period, in place.
   *
   * @param stored energy stored in y, J
   * @returns the same at the end
   * @throws DivergedError when the result is not finite
   */
  advance(y: State, stored: number): number {
    copy(y, this.#start, this.#size);
    for (;;) {
      this.#tryTick(y);
      const after = this.#plant.storedEnergy(y);
      const passed = Math.abs(y[E_IN]) + Math.abs(y[E_OUT]) + Math.abs(after - stored);
      const losses = y[E_COPPER] + y[E_IRON] + y[E_NUT] + y[E_GUIDE] + y[E_OTHER];
      const off = Math.abs(y[E_IN] - losses - y[E_OUT] - (after - stored));
      const floor = ENERGY_FLOOR + ROUNDINGS * Math.abs(after);
      const bound = ENERGY_BOUND * Math.max(passed, this.#throughput) + floor;
      if (off <= bound || this.#steps === this.#most) {
        if (off * MARGIN < bound && this.#steps > this.#fewest)
          this.#steps = Math.max(this.#steps >> 1, this.#fewest);
        this.#throughput += FORGETTING * (passed - this.#throughput);
        return after;
      }
      this.#steps = Math.min(2 * this.#steps, this.#most);
      copy(this.#start, y, this.#size);
    }
  }

  #tryTick(y: State): void {
    const steps = this.#steps;
    const step = this.#span / steps;
    for (let n = 0; n < steps; n++) {
      const contacts = this.#plant.contacts(y);
      this.#tryStep(y, step);
      if (this.#plant.contacts(this.#end) === contacts) copy(this.#end, y, this.#size);
      else this.#acrossContact(y, step);
    }
    for (let i = 0; i < this.#size; i++)
      if (!Number.isFinite(stateAt(y, i))) throw new DivergedError(`state ${i} is no longer finite`);
  }

  /** One step of so many seconds during which contacts close or open, in parts. */
  #acrossContact(y: State, step: number): void {
    const shortest = step * SHORTEST_SHARE;
    let part = step / 2;
    let left = step;
    for (let tried = 0; left > 0; tried++) {
      const contacts = this.#plant.contacts(y);
      this.#tryStep(y, part);
      const crosses = this.#plant.contacts(this.#end) !== contacts;
      if (crosses && part > shortest && tried < MOST_TRIED) {
        part /= 2;
        continue;
      }
      copy(this.#end, y, this.#size);
      left -= part;
      part = Math.min(2 * part, left);
    }
  }

  /** From y to `end`, over h seconds. */
  #tryStep(y: Readonly<State>, h: number): void {
    const plant = this.#plant;
    const size = this.#size;
    const stage = this.#stage;
    const end = this.#end;
    const k1 = this.#k1;
    const k2 = this.#k2;
    const k3 = this.#k3;
    const k4 = this.#k4;
    plant.derivative(0, y, k1);
    this.#toStage(y, k1, h / 2);
    plant.derivative(0, stage, k2);
    this.#toStage(y, k2, h / 2);
    plant.derivative(0, stage, k3);
    this.#toStage(y, k3, h);
    plant.derivative(0, stage, k4);
    const sixth = h / 6;
    for (let i = 0; i < size; i++) {
      const inner = stateAt(k2, i) + stateAt(k3, i);
      end[i] = stateAt(y, i) + sixth * (stateAt(k1, i) + 2 * inner + stateAt(k4, i));
    }
  }

  #toStage(y: Readonly<State>, k: Readonly<State>, h: number): void {
    const stage = this.#stage;
    for (let i = 0; i <= Z; i++) stage[i] = stateAt(y, i) + h * stateAt(k, i);
    for (let i = CURRENTS; i < this.#size; i++) stage[i] = stateAt(y, i) + h * stateAt(k, i);
  }
}

function copy(from: Readonly<State>, to: State, size: number): void {
  for (let i = 0; i < size; i++) to[i] = stateAt(from, i);
}
