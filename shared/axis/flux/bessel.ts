/*
 * Modified Bessel functions of orders 0 and 1 for u > 0 (I0 for any u), to the last digits for u < 40.
 *
 *   I_m(u) = (u/2)^m Σ (u²/4)^k/(k! (k + m)!)          Abramowitz & Stegun, Handbook of Mathematical Functions, 9.6.10
 *   K_m(u) = ∫ exp(−u cosh t) cosh(m t) dt from 0      the same, 9.6.24; the trapezoidal rule converges exponentially
 */

export function besselI0(u: number): number {
  return series(u, 0);
}

export function besselI1(u: number): number {
  return (u / 2) * series(u, 1);
}

export function besselK0(u: number): number {
  return integral(u, () => 1);
}

export function besselK1(u: number): number {
  return integral(u, Math.cosh);
}

/** Σ (u²/4)^k/(k! (k + order)!) for an order of 0 or 1: every term is positive, so nothing cancels. */
function series(u: number, order: number): number {
  const quarter = (u * u) / 4;
  let term = 1;
  let sum = 1;
  for (let k = 1; k < 120 && term > sum * 1e-17; k++) {
    term *= quarter / (k * (k + order));
    sum += term;
  }
  return sum;
}

/** Step of the rule. Its error falls as exp(−π²/step). */
const STEP = 1 / 8;

function integral(u: number, weight: (t: number) => number): number {
  let sum = Math.exp(-u) / 2;
  for (let k = 1; k < 400; k++) {
    const t = k * STEP;
    const term = Math.exp(-u * Math.cosh(t)) * weight(t);
    sum += term;
    if (term < sum * 1e-18) break;
  }
  return sum * STEP;
}
