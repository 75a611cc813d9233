/** Where each state stands in the vector that the solver integrates. */
export const X1 = 0;
export const V1 = 1;
export const X2 = 2;
export const V2 = 3;
export const Z = 4;
/** Energies since the start of the tick, J; emptied into the audit after each tick. */
export const E_IN = 5;
export const E_COPPER = 6;
export const E_IRON = 7;
export const E_NUT = 8;
export const E_GUIDE = 9;
export const E_OTHER = 10;
export const E_OUT = 11;
/** i_d and i_q of motor j at CURRENTS + 2j and CURRENTS + 2j + 1; position and speed of a moving base behind them, then of each flexible part. */
export const CURRENTS = 12;

/** While the terms add up their shares, these places of the derivative hold the forces along +x on motor side and table, N. */
export const F1 = V1;
export const F2 = V2;

/**
 * The vector of states, and of their derivatives. Those up to CURRENTS are always there, so the type checker knows that `y[X1]` is a
 * number; the others are read with `stateAt`.
 */
export type State = [
  x1: number,
  v1: number,
  x2: number,
  v2: number,
  z: number,
  supplied: number,
  copper: number,
  iron: number,
  nut: number,
  guide: number,
  other: number,
  delivered: number,
  ...currentsBaseAndModes: number[],
];

/** Where the position of a moving base stands; its speed follows. */
export function baseAt(motors: number): number {
  return CURRENTS + 2 * motors;
}

/** Where the position of the first flexible part stands; its speed follows, then the next part. */
export function modesAt(motors: number, base: boolean): number {
  return baseAt(motors) + (base ? 2 : 0);
}

export function stateCount(motors: number, base: boolean, modes = 0): number {
  return modesAt(motors, base) + 2 * modes;
}

/**
 * A state of zeros. Its places hold fractions from the start: a list that began with whole numbers would be converted at the first
 * fraction, and all code that had read it compiled again.
 */
export function newState(size: number): State {
  return asState(new Array<number>(size).fill(0.5).fill(0));
}

/**
 * The same list, known as a vector of states.
 *
 * @throws RangeError for a list that is too short to be one
 */
export function asState(values: number[]): State {
  if (values.length < CURRENTS) throw new RangeError(`A list of ${values.length} is no vector of states.`);
  return values as State;
}

/** A current, or a state of the base or of a flexible part. A function of its own, since the engine reads fastest where it meets one kind of list. */
export function stateAt(y: Readonly<State>, index: number): number {
  const value = y[index];
  return value === undefined ? missing(index) : value;
}

function missing(index: number): never {
  throw new RangeError(`The plant has no state ${index}.`);
}

/** Temperatures in the order of the heat network, °C. */
export interface Temperatures {
  winding: number;
  carrier: number;
  table: number;
  screw: number;
}
