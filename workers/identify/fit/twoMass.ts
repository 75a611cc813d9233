/** Motor and table as two masses on a link, the motor in its drag, the table held by its guide's bristles. SI. */
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
 * Position over motor force in small swings about a standing position:
 *
 *   κ = k + jωc      D1 = κ − m1 ω² + jω c_m      D2 = κ − m2 ω² + jω c_g + k_g
 *   X2/F = κ/(D1 D2 − κ²)                X1/F = D2/(D1 D2 − κ²)
 *
 * D1 D2 − κ² is worked out as κ (D2 − κ) + (D1 − κ) D2, where nothing large cancels.
 * Source: Newton's law for each mass.
 */
export function positionOverForce(
  omega: number,
  m: TwoMass,
  side: 'load' | 'motor',
): { re: number; im: number } {
  const kr = m.stiffness;
  const ki = omega * m.damping;
  const ground = m.guideStiffness - m.tableMass * omega * omega;
  const groundIm = omega * m.guideDamping;
  const d2r = kr + ground;
  const d2i = ki + groundIm;
  const inertia = -m.motorMass * omega * omega;
  const drag = omega * m.motorDamping;
  const re = kr * ground - ki * groundIm + inertia * d2r - drag * d2i;
  const im = kr * groundIm + ki * ground + inertia * d2i + drag * d2r;
  const size = re * re + im * im;
  const [nr, ni] = side === 'load' ? [kr, ki] : [d2r, d2i];
  return { re: (nr * re + ni * im) / size, im: (ni * re - nr * im) / size };
}
