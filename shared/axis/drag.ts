import type { Parameters } from '../core/parameters/table.ts';

/*
 * Drag on the motor side, N against a speed v1 in m/s; dry drag changes its sign over v_h:
 *
 *   F_iron = N (c_e v1 + F_h tanh(v1/v_h))      eddy currents and hysteresis in the iron of all N motors
 *   F_nut  = d_n v1 + F_n tanh(v1/v_h)          nut and bearings of a screw
 */

/** v_h, m/s. */
export const DRAG_REVERSAL = 5e-4;

export interface Drag {
  /** N */
  readonly dry: number;
  /** N·s/m */
  readonly viscous: number;
}

export const NO_DRAG: Drag = { dry: 0, viscous: 0 };

export function ironDrag({ motorCount, hysteresisDrag, eddyDrag }: Parameters): Drag {
  return { dry: motorCount * hysteresisDrag, viscous: motorCount * eddyDrag };
}

export function nutDrag(p: Parameters): Drag {
  return { dry: p.nutDrag, viscous: p.nutViscous };
}

/** Of iron and nut together at a motor speed (m/s), N. */
export function dragForce(iron: Drag, nut: Drag, speed: number): number {
  const dry = iron.dry + nut.dry;
  const viscous = (iron.viscous + nut.viscous) * speed;
  return dry > 0 ? viscous + dry * Math.tanh(speed / DRAG_REVERSAL) : viscous;
}

/** Dry drag of nut and iron together, N. */
export function dryMotorDrag(p: Parameters): number {
  return nutDrag(p).dry + ironDrag(p).dry;
}

/** Everything that resists in proportion to speed: guide, nut and iron, N·s/m. */
export function viscousDrag(p: Parameters): number {
  return p.viscous + nutDrag(p).viscous + ironDrag(p).viscous;
}
