/** Where each state stands in the vector the solver integrates. */
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
/** i_d and i_q of motor j at CURRENTS + 2j and CURRENTS + 2j + 1; position and speed of a moving base behind them. */
export const CURRENTS = 12;

export function stateCount(motors: number, base: boolean): number {
  return CURRENTS + 2 * motors + (base ? 2 : 0);
}

/** Temperatures in the order of the heat network, °C. */
export interface Temperatures {
  winding: number;
  carrier: number;
  table: number;
  screw: number;
}
