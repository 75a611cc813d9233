import { expect, it } from 'vitest';
import { eigenvalues } from '../../../workers/math/eigenvalues.ts';
import { Matrix } from '../../../workers/math/matrix.ts';

/**
 * Two motors alike on an axis, whose currents decay and turn at the same rate: two pairs of eigenvalues nearly the same. What one step
 * after the other takes for a shift then lies between them, again and again. Found by random scenes; made as small as it still does so.
 */
const TWO_MOTORS = [
  [0, 1, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  [-612.4133158293471, -0.0414, 0, 0, 0, 0, 0, 0.07, 0, 0, 0, 0],
  [0, 0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0],
  [10000000, 0, -12000000, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  [0, 0, 0, 0, -210700, 2513.2741228718337, 0, 0, 0, 0, 0, 0],
  [47660868.74102862, -207991233.65668735, 0, 0, -2513.27412284445, -210699.9999997788, 0, 0, 0, 0, 0, 0],
  [-446.23, 1947.35, 0, 0, 0, 0, -210700, 2513.2741228718346, 0, 0, 0, 0],
  [47660868.74102862, -207991233.647898, 0, 0, 0, 0, -2513.27412284445, -210699.9999997788, 0, 0, 0, 0],
  [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  [0, 0, 0, 0, 0, 0, 0, -0.001, 0, 0, 0, 0],
  [0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1],
  [0, 0, 0, 0, 0, 0, 0, 0, 0, 0.006, -40, 0],
];

/** By NumPy 2.4 (LAPACK): real and imaginary parts. */
const TWO_MOTORS_BY_NUMPY = [
  [-210699.99999988914, -2513.274122858083],
  [-210699.99999988914, 2513.274122858083],
  [-210665.44349662622, -2513.448557284095],
  [-210665.44349662622, 2513.448557284095],
  [-59.047714039660164, 0],
  [-10.106692486856259, 0],
  [0, -3464.101615137757],
  [0, -6.32455532033676],
  [0, 0],
  [0, 0],
  [0, 6.32455532033676],
  [0, 3464.101615137757],
] as const;

/**
 * The same two motors where friction is so stiff that the guide swings: between their eigenvalues and the swing the corner of the
 * matrix has one real shift near each, and leads to neither.
 */
const TWO_MOTORS_AND_SWING = [
  [0, 1000, 0, 0, 0, 0, 0, 0, 0, 0, 0],
  [0, 0, 1, 0, 0, 0, 0, 0, 0, 0, 0],
  [400, -10000000, 0, -3000000, 0, 0, 0, 0, 0, 0, 0],
  [0, 0, 0.000005, -100000, 0, 0, 0, 0, 0, 0, 0],
  [0, 0, 0, 0, -679792.4288869139, 2513.2741228718337, 0, 0, 0, 0, 0],
  [-5000000, 0, 0, 0, -2513.274122873554, -679792.4288869144, 0, 0, 0, 0, 0],
  [5000000, 0, 0, 0, 0, 0, -679792.428886915, 2513.27412287416, 0, 0, 0],
  [0, 0, 0, 0, 0, 0, -2513.274122870371, -679792.4288869133, 0, 0, 0],
  [0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 0],
  [0, 40, 0, 0, 0, 0, 0, 0, -40, 0, 0],
  [0.3, 0, 0, 0, 0, 0, 0, 0, 0, 0, -0.3],
];

const TWO_MOTORS_AND_SWING_BY_NUMPY = [
  [-679792.428886914, -2513.2741228724844],
  [-679792.428886914, 2513.2741228724844],
  [-679792.4288869137, -2513.2741228727396],
  [-679792.4288869137, 2513.2741228727396],
  [-99999.99985015007, 0.0],
  [-0.3, 0.0],
  [-0.020074925073231498, -3162.27766272793],
  [-0.020074925073231498, 3162.27766272793],
  [4.0717318405825154e-11, -6.324555320336702],
  [4.0717318405825154e-11, 6.324555320336702],
  [0.039999999984916615, 0.0],
] as const;

it.each([
  ['two motors', TWO_MOTORS, TWO_MOTORS_BY_NUMPY],
  ['two motors and a swing', TWO_MOTORS_AND_SWING, TWO_MOTORS_AND_SWING_BY_NUMPY],
] as const)('finds eigenvalues that lie close together, as another library does: %s', (_, rows, byNumPy) => {
  const { re, im } = eigenvalues(Matrix.of(rows));
  const left = byNumPy.map(([x, y]) => ({ x, y }));
  for (const [k, x] of re.entries()) {
    const y = im[k] ?? Number.NaN;
    const nearest = left.toSorted((a, b) => Math.hypot(a.x - x, a.y - y) - Math.hypot(b.x - x, b.y - y))[0];
    if (!nearest) throw new Error('more eigenvalues than rows');
    expect(Math.hypot(nearest.x - x, nearest.y - y)).toBeLessThan(1e-5);
    left.splice(left.indexOf(nearest), 1);
  }
  expect(left).toEqual([]);
});
