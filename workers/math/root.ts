/** Relative width at which a root counts as found. */
const FOUND = 1e-12;
const MAX_STEPS = 100;

/**
 * Where f changes sign between a and b, given that it does. Illinois variant of the false position:
 * superlinear, and never out of the bracket. Source: Dowell, Jarratt, A modified regula falsi
 * method, BIT 11, 1971.
 *
 * @param fa f at a, where it is known already; `fb` likewise
 */
export function root(f: (x: number) => number, a: number, b: number, fa = f(a), fb = f(b)): number {
  for (let step = 0; step < MAX_STEPS && Math.abs(b - a) > FOUND * Math.abs(b); step++) {
    const x = fa === fb ? (a + b) / 2 : b - (fb * (b - a)) / (fb - fa);
    const fx = f(x);
    if (fx === 0) return x;
    if (fx > 0 !== fb > 0) {
      a = b;
      fa = fb;
    } else {
      fa /= 2;
    }
    b = x;
    fb = fx;
  }
  return b;
}
