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
 * number; the others are read with `valueAt`.
 */
export interface State extends Float64Array<ArrayBuffer> {
  [X1]: number;
  [V1]: number;
  [X2]: number;
  [V2]: number;
  [Z]: number;
  [E_IN]: number;
  [E_COPPER]: number;
  [E_IRON]: number;
  [E_NUT]: number;
  [E_GUIDE]: number;
  [E_OTHER]: number;
  [E_OUT]: number;
}

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
 * A state of zeros.
 *
 * @throws RangeError for a size that is too small to be one
 */
export function newState(size: number): State {
  if (size < CURRENTS) throw new RangeError(`A list of ${size} is no vector of states.`);
  return new Float64Array(size) as State;
}

/** Sets the energies of a tick, or their rates, to zero. Line by line: it is done at every evaluation. */
export function clearEnergies(y: State): void {
  y[E_IN] = 0;
  y[E_COPPER] = 0;
  y[E_IRON] = 0;
  y[E_NUT] = 0;
  y[E_GUIDE] = 0;
  y[E_OTHER] = 0;
  y[E_OUT] = 0;
}

/** Temperatures in the order of the heat network, °C. */
export interface Temperatures {
  winding: number;
  carrier: number;
  table: number;
  screw: number;
}
