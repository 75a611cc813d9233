import { type Complex, over } from '../../math/complex.ts';

/**
 * Motor and table as two masses on a link, the motor with its drag, the table held by the bristles
 * of its guide. SI.
 */
export interface TwoMass {
  readonly motorMass: number;
  readonly motorDamping: number;
  readonly tableMass: number;
  readonly stiffness: number;
  readonly damping: number;
  readonly guideStiffness: number;
  readonly guideDamping: number;
}

/*
 * Position over motor force in small oscillations about a position at rest:
 *
 *   κ = k + jωc      D1 = κ − m1 ω² + jω c_m      D2 = κ − m2 ω² + jω c_g + k_g
 *   X2/F = κ/(D1 D2 − κ²)                X1/F = D2/(D1 D2 − κ²)
 *
 * D1 D2 − κ² is computed as κ (D2 − κ) + (D1 − κ) D2, where nothing large cancels.
 * Source: Newton's law for each mass.
 */
export function positionOverForce(omega: number, m: TwoMass, side: 'load' | 'motor'): Complex {
  const link = { re: m.stiffness, im: omega * m.damping };
  const ground = m.guideStiffness - m.tableMass * omega * omega;
  const groundIm = omega * m.guideDamping;
  const table = { re: link.re + ground, im: link.im + groundIm };
  const inertia = -m.motorMass * omega * omega;
  const drag = omega * m.motorDamping;
  const determinant = {
    re: link.re * ground - link.im * groundIm + inertia * table.re - drag * table.im,
    im: link.re * groundIm + link.im * ground + inertia * table.im + drag * table.re,
  };
  return over(side === 'load' ? link : table, determinant);
}
