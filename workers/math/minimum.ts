const GOLDEN = (3 - Math.sqrt(5)) / 2;
/**
 * A minimum is flat: its place is known to the square root of the rounding, its value to the
 * rounding itself.
 */
const FLAT = 1e-8;

/**
 * Where f is smallest between a < b, given that it falls and then rises. Golden section search.
 * Source: Kiefer, Sequential minimax search for a maximum, Proc. American Mathematical Society
 * 4(3), 1953.
 */
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
