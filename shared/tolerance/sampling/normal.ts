const SQRT_2PI = Math.sqrt(2 * Math.PI);

/** More steps than are ever needed within MAX_CUT. */
const MAX_STEPS = 60;
const SETTLED = 1e-14;

/**
 * Φ(x) − ½ for |x| of a few standard deviations: φ(x) (x + x³/3 + x⁵/(3·5) + …).
 * Source: Abramowitz, Stegun, Handbook of Mathematical Functions, 26.2.11.
 */
export function normalShare(x: number): number {
  let [term, sum] = [x, x];
  for (let k = 3; Math.abs(term) > Number.EPSILON * Math.abs(sum); k += 2) {
    term *= (x * x) / k;
    sum += term;
  }
  return sum * density(x);
}

function density(x: number): number {
  return Math.exp(-0.5 * x * x) / SQRT_2PI;
}

/**
 * The value below which a standard normal distribution that is cut off at ±`cut` has the share u. Newton's method from the
 * middle outwards, where the share is concave, so that no step goes too far.
 */
export function cutNormal(u: number, cut: number): number {
  const share = Math.abs(2 * u - 1) * normalShare(cut);
  let x = 0;
  for (let k = 0; k < MAX_STEPS; k++) {
    const step = (share - normalShare(x)) / density(x);
    x += step;
    if (Math.abs(step) < SETTLED) break;
  }
  return Math.sign(u - 0.5) * Math.min(x, cut);
}
