/** Relative width at which a frequency counts as found. */
const FOUND = 1e-12;
const MAX_STEPS = 100;

/**
 * Where f changes sign between a and b, given that it does. Illinois variant of the false position: superlinear and never out
 * of the bracket. Source: Dowell, Jarratt, A modified regula falsi method, BIT 11, 1971.
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

const GOLDEN = (3 - Math.sqrt(5)) / 2;
/** A minimum is flat: its place is known to the root of the rounding, its value to the rounding. */
const FLAT = 1e-8;

/** Where f is least between a and b, given that it falls and then rises. Golden section (Kiefer 1953). */
export function minimum(f: (x: number) => number, a: number, b: number): number {
  let left = a + GOLDEN * (b - a);
  let right = b - GOLDEN * (b - a);
  let fLeft = f(left);
  let fRight = f(right);
  while (b - a > FLAT * Math.abs(b)) {
    if (fLeft < fRight) {
      b = right;
      right = left;
      fRight = fLeft;
      left = a + GOLDEN * (b - a);
      fLeft = f(left);
    } else {
      a = left;
      left = right;
      fLeft = fRight;
      right = b - GOLDEN * (b - a);
      fRight = f(right);
    }
  }
  return (a + b) / 2;
}
