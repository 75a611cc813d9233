import { at } from '../../core/at.ts';
import { seeded } from '../../core/seeded.ts';

/*
 * Sobol points: point n has in dimension j the coordinate
 *
 *   x_j(n) = g_1 v_j1 ⊕ g_2 v_j2 ⊕ …  over 2³²,   g the bits of the Gray code n ⊕ n/2
 *
 * Primitive polynomials of degree s with inner coefficients a, and initial direction numbers m, are those of S. Joe and
 * F. Y. Kuo, Constructing Sobol sequences with better two-dimensional projections, SIAM J. Sci. Comput. 30 (2008), 2635–2654
 * (set D6, their first twenty dimensions); dimension 1 is van der Corput's sequence. A seed shifts every dimension by a
 * random pattern of bits, which keeps how evenly the points lie: L'Ecuyer, Lemieux, Recent advances in randomized
 * quasi-Monte Carlo methods, 2002.
 */

const BITS = 32;
const WHOLE = 2 ** BITS;

/** s is the number of m. */
const DIRECTIONS: readonly { readonly a: number; readonly m: readonly number[] }[] = [
  { a: 0, m: [1] },
  { a: 1, m: [1, 3] },
  { a: 1, m: [1, 3, 1] },
  { a: 2, m: [1, 1, 1] },
  { a: 1, m: [1, 1, 3, 3] },
  { a: 4, m: [1, 3, 5, 13] },
  { a: 2, m: [1, 1, 5, 5, 17] },
  { a: 4, m: [1, 1, 5, 5, 5] },
  { a: 7, m: [1, 1, 7, 11, 19] },
  { a: 11, m: [1, 1, 5, 1, 1] },
  { a: 13, m: [1, 1, 1, 3, 11] },
  { a: 14, m: [1, 3, 5, 5, 31] },
  { a: 1, m: [1, 3, 3, 9, 7, 49] },
  { a: 13, m: [1, 1, 1, 15, 21, 21] },
  { a: 16, m: [1, 3, 1, 13, 27, 49] },
  { a: 19, m: [1, 1, 1, 15, 7, 5] },
  { a: 22, m: [1, 3, 1, 15, 13, 25] },
  { a: 25, m: [1, 1, 5, 5, 19, 61] },
  { a: 1, m: [1, 3, 7, 11, 23, 15, 103] },
];

export const MAX_DIMENSIONS = DIRECTIONS.length + 1;

/** The direction numbers v_j1 … v_j32 of a dimension, counted from 0. */
function directionNumbers(dimension: number): Uint32Array {
  const v = new Uint32Array(BITS);
  const polynomial = dimension === 0 ? null : at(DIRECTIONS, dimension - 1);
  for (let k = 0; k < BITS; k++) {
    const s = polynomial?.m.length ?? BITS;
    if (!polynomial || k < s) {
      v[k] = ((polynomial ? at(polynomial.m, k) : 1) << (BITS - 1 - k)) >>> 0;
      continue;
    }
    let value = at(v, k - s) ^ (at(v, k - s) >>> s);
    for (let i = 1; i < s; i++) if ((polynomial.a >> (s - 1 - i)) & 1) value ^= at(v, k - i);
    v[k] = value;
  }
  return v;
}

/** Coordinates of point `index`, counted from 0, each in (0, 1). Seed 0 does not shift. */
export function sobolPoints(dimensions: number, seed: number): (index: number) => Float64Array {
  const random = seeded(seed);
  const each = Array.from({ length: dimensions }, (_, dimension) => ({
    v: directionNumbers(dimension),
    shift: seed === 0 ? 0 : Math.floor(random() * WHOLE),
  }));
  return (index) => {
    const gray = index ^ (index >>> 1);
    return Float64Array.from(each, ({ v, shift }) => {
      let x = shift;
      for (let k = 0, left = gray; left !== 0; k++, left >>>= 1) if (left & 1) x ^= at(v, k);
      return ((x >>> 0) + 0.5) / WHOLE;
    });
  };
}
