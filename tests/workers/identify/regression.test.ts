import { describe, expect, it } from 'vitest';
import { at, present } from '../../../shared/core/at.ts';
import { jackknife } from '../../../workers/identify/fit/jackknife.ts';
import { leastSquares } from '../../../workers/math/leastSquares.ts';
import { levenbergMarquardt } from '../../../workers/math/levenbergMarquardt.ts';

/*
 * Statistical Reference Datasets of the National Institute of Standards and Technology (www.itl.nist.gov/div898/strd). Data and certified values are
 * from memory: that the fits meet the certified values to so many digits shows that both are right.
 */

const ones = (n: number) => new Float64Array(n).fill(1);
const columnsOf = (rows: readonly (readonly number[])[]) =>
  at(rows, 0).map((_, j) => Float64Array.from(rows, (row) => at(row, j)));

/** Correct significant digits, as the test sets count them. */
const digits = (value: number, certified: number) => -Math.log10(Math.abs(value / certified - 1));

const standardDeviation = (fit: ReturnType<typeof jackknife>, k: number) =>
  Math.sqrt(present(fit.covariance).get(k, k));

describe('linear least squares against certified values', () => {
  it('Norris, a straight line: lower difficulty', () => {
    const [y, x] = columnsOf([
      [0.1, 0.2],
      [338.8, 337.4],
      [118.1, 118.2],
      [888.0, 884.6],
      [9.2, 10.1],
      [228.1, 226.5],
      [668.5, 666.3],
      [998.5, 996.3],
      [449.1, 448.6],
      [778.9, 777.0],
      [559.2, 558.2],
      [0.3, 0.4],
      [0.1, 0.6],
      [778.1, 775.5],
      [668.8, 666.9],
      [339.3, 338.0],
      [448.9, 447.5],
      [10.8, 11.6],
      [557.7, 556.0],
      [228.3, 228.1],
      [998.0, 995.8],
      [888.8, 887.6],
      [119.6, 120.2],
      [0.3, 0.3],
      [0.6, 0.3],
      [557.6, 556.8],
      [339.3, 339.1],
      [888.0, 887.2],
      [998.5, 999.0],
      [778.9, 779.0],
      [10.2, 11.1],
      [117.6, 118.3],
      [228.9, 229.2],
      [668.4, 669.1],
      [449.2, 448.9],
      [0.2, 0.5],
    ]) as [Float64Array, Float64Array];
    const fit = jackknife([ones(36), x], y, 1);
    expect(digits(at(fit.x, 0), -0.262323073774029)).toBeGreaterThan(11);
    expect(digits(at(fit.x, 1), 1.00211681802045)).toBeGreaterThan(13);
    expect(digits(standardDeviation(fit, 0), 0.232818234301152)).toBeGreaterThan(10);
    expect(digits(standardDeviation(fit, 1), 0.429796848199937e-3)).toBeGreaterThan(10);
  });

  it('Longley, seven coefficients of nearly dependent columns: higher difficulty', () => {
    const [y, ...x] = columnsOf([
      [60323, 83.0, 234289, 2356, 1590, 107608, 1947],
      [61122, 88.5, 259426, 2325, 1456, 108632, 1948],
      [60171, 88.2, 258054, 3682, 1616, 109773, 1949],
      [61187, 89.5, 284599, 3351, 1650, 110929, 1950],
      [63221, 96.2, 328975, 2099, 3099, 112075, 1951],
      [63639, 98.1, 346999, 1932, 3594, 113270, 1952],
      [64989, 99.0, 365385, 1870, 3547, 115094, 1953],
      [63761, 100.0, 363112, 3578, 3350, 116219, 1954],
      [66019, 101.2, 397469, 2904, 3048, 117388, 1955],
      [67857, 104.6, 419180, 2822, 2857, 118734, 1956],
      [68169, 108.4, 442769, 2936, 2798, 120445, 1957],
      [66513, 110.8, 444546, 4681, 2637, 121950, 1958],
      [68655, 112.6, 482704, 3813, 2552, 123366, 1959],
      [69564, 114.2, 502601, 3931, 2514, 125368, 1960],
      [69331, 115.7, 518173, 4806, 2572, 127852, 1961],
      [70551, 116.9, 554894, 4007, 2827, 130081, 1962],
    ]) as [Float64Array, ...Float64Array[]];
    const fit = leastSquares([ones(16), ...x], y);
    const certified = [
      -3482258.63459582, 15.0618722713733, -0.035819179292591, -2.02022980381683, -1.03322686717359,
      -0.0511041056535807, 1829.15146461355,
    ];
    certified.forEach((value, k) => {
      expect(digits(at(fit.x, k), value)).toBeGreaterThan(8);
    });
  });

  it('says which column is a mixture of the others, and does without it', () => {
    const t = Float64Array.from({ length: 20 }, (_, k) => k);
    const fit = leastSquares(
      [ones(20), t, t.map((v) => 3 * v - 2)],
      t.map((v) => 5 + 2 * v),
    );
    expect(fit.dependent).toEqual([false, false, true]);
    expect(fit.x[0]).toBeCloseTo(5, 12);
    expect(fit.x[1]).toBeCloseTo(2, 12);
    expect(fit.x[2]).toBe(0);
  });
});

describe('nonlinear least squares against certified values', () => {
  // Misra1a, lower difficulty: y = b1 (1 − exp(−b2 x)).
  const y = [10.07, 14.73, 17.94, 23.93, 29.61, 35.18, 40.02, 44.82, 50.76, 55.05, 61.01, 66.4, 75.47, 81.78];
  const x = [77.6, 114.9, 141.1, 190.8, 239.9, 289.0, 332.8, 378.4, 434.8, 477.3, 536.8, 593.1, 689.1, 760.0];

  it.each([
    [500, 0.0001],
    [250, 0.0005],
  ])('Misra1a from %d and %d', (...start) => {
    const fit = levenbergMarquardt(
      (b, out) => {
        x.forEach((value, k) => {
          out[k] = at(b, 0) * (1 - Math.exp(-at(b, 1) * value)) - at(y, k);
        });
      },
      start,
      y.length,
    );
    expect(digits(at(fit.x, 0), 2.3894212918e2)).toBeGreaterThan(6);
    expect(digits(at(fit.x, 1), 5.5015643181e-4)).toBeGreaterThan(6);
    const square = fit.residual.reduce((sum, r) => sum + r * r, 0);
    expect(digits(square, 1.2455138894e-1)).toBeGreaterThan(9);
  });
});
