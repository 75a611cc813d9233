import type { Parameters } from '../core/parameters/table.ts';

/*
 * How the field at the coil follows the fit of the motor.
 *
 *   gap      B/B0 = (h_m + μ_r g0)/(h_m + μ_r g)    one-dimensional load line of a magnet behind an air gap
 *   cosh     B/B0 = cosh(πe/τ)                      coil off centre by e between two equal magnet rows
 *   bessel   B/B0 = I0(πe/τ)                        coil eccentric by e around a magnet shaft
 *
 * The last two are exact for the fundamental: it solves Laplace's equation in the gap, and the mean over the coil follows from
 * the addition theorem (Abramowitz & Stegun, Handbook of Mathematical Functions, 9.6 and 9.1.79).
 */

/** Factor on flux: B/B0 for the chosen law, dimensionless. */
export function fitFactor(p: Parameters, polePitch: number): number {
  // The rotary motor of a screw has its fit within its housing: its datasheet contains it.
  if (p.lead > 0) return 1;
  switch (p.fieldLaw) {
    case 'gap':
      return (
        (p.magnetHeight + p.recoilPermeability * p.nominalGap) /
        (p.magnetHeight + p.recoilPermeability * p.airGap)
      );
    case 'cosh':
      return Math.cosh((Math.PI * p.coilOffset) / polePitch);
    case 'bessel':
      return besselI0((Math.PI * p.coilOffset) / polePitch);
    case 'none':
      return 1;
  }
}

/** Factor (B/B0)² on cogging and attraction. Only the gap law changes the field in the iron. */
export function ironFactor(p: Parameters, polePitch: number): number {
  return p.fieldLaw === 'gap' ? fitFactor(p, polePitch) ** 2 : 1;
}

/** Modified Bessel function I0(u) = Σ (u²/4)^k/(k!)² (Abramowitz & Stegun 9.6.12), to the last digits for |u| < 20. */
export function besselI0(u: number): number {
  const quarter = (u * u) / 4;
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 60 && term > sum * 1e-17; k++) {
    term *= quarter / (k * k);
    sum += term;
  }
  return sum;
}
