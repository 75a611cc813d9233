import { describe, expect, it } from 'vitest';
import { at as elementAt, present } from '../../shared/core/at.ts';
import { type Curve, margins } from '../../workers/analysis/margins.ts';
import { type Complex, magnitude, over, phase, plus, times, unit } from '../../workers/math/complex.ts';
import { logSpaced } from '../../workers/math/logSpaced.ts';
import { Matrix } from '../../workers/math/matrix.ts';
import { Transfer } from '../../workers/math/transfer.ts';
import { zeroOrderHold } from '../../workers/math/zeroOrderHold.ts';

const DEGREE = Math.PI / 180;

/** Σ c_k s^k, highest power first. */
function polynomial(coefficients: readonly number[], s: Complex): Complex {
  return coefficients.reduce<Complex>((sum, c) => plus(times(sum, s), { re: c, im: 0 }), { re: 0, im: 0 });
}

function continuous(num: readonly number[], den: readonly number[]): Curve {
  return (omega) => over(polynomial(num, { re: 0, im: omega }), polynomial(den, { re: 0, im: omega }));
}

/** num/den (constant numerator, monic denominator) behind a zero-order hold, sampled at `period`. */
function sampled(num: number, den: readonly number[], period: number): Curve {
  const n = den.length - 1;
  const a = new Matrix(n, n);
  for (let i = 0; i + 1 < n; i++) a.set(i, i + 1, 1);
  for (let j = 0; j < n; j++) a.set(n - 1, j, -elementAt(den, n - j));
  const b = new Matrix(n, 1);
  b.set(n - 1, 0, num);
  const { phi, gamma } = zeroOrderHold(a, b, period);
  const output = new Float64Array(n);
  output[0] = 1;
  const transfer = new Transfer(phi, gamma, output);
  return (omega) => elementAt(transfer.at(unit(omega * period)), 0);
}

const marginsOf = (curve: Curve, to = 1e3) => margins(curve, logSpaced(1e-3, to, 4000));

/*
 * github.com/python-control/python-control, control/tests/margin_test.py (BSD licence): gain margin as a factor, phase margin in degrees,
 * smallest |1 + L|, angular frequencies of each in rad/s. Where the file prints digits that an exact recomputation does not
 * give, fewer are asked for.
 */
describe('margins of published loops', () => {
  /** A figure, its frequency, and how far each may be off. */
  type Figure = readonly [value: number, omega: number, valueOff: number, omegaOff: number];
  interface Expected {
    readonly gain?: Figure;
    readonly phase?: Figure;
    readonly modulus?: Figure;
  }
  const LOOPS: readonly [string, Curve, Expected][] = [
    [
      '1/(s³ + 2s² + 3s + 4)',
      continuous([1], [1, 2, 3, 4]),
      { gain: [2, 1.7321, 6e-4, 6e-4], modulus: [0.417, 1.662, 6e-4, 6e-4] },
    ],
    [
      '2/(s + 1)³',
      continuous([2], [1, 3, 3, 1]),
      { gain: [4, 1.732, 1e-3, 6e-4], phase: [67.6, 0.766, 6e-3, 6e-4] },
    ],
    ['(s + 0.1)/(s² + s)', continuous([1, 0.1], [1, 1, 0]), { phase: [144.9032, 0.3162, 1e-4, 1e-4] }],
    ['(s + 0.1)/(s³ + s²)', continuous([1, 0.1], [1, 1, 0, 0]), { phase: [44.459, 0.7907, 6e-4, 6e-4] }],
    [
      '(s + 0.1)²/(s⁴ + s³)',
      continuous([1, 0.2, 0.01], [1, 1, 0, 0, 0]),
      { phase: [37.17, 0.7951, 6e-3, 6e-3] },
    ],
    // Seiler, Packard, Gahinet, An Introduction to Disk Margins, IEEE Control Systems Magazine 40(5), 2020 (margins from memory).
    [
      '25/(s³ + 10s² + 10s + 10)',
      continuous([25], [1, 10, 10, 10]),
      { gain: [3.6, 3.1623, 3.6e-4, 3.1e-4], phase: [29.1104, 1.7844, 2.9e-3, 1.7e-4] },
    ],
    // Åström, Murray, Feedback Systems, example on stability margins (from memory); ω = √3 and √(∛9 − 1) exactly.
    [
      '3/(s + 1)³',
      continuous([3], [1, 3, 3, 1]),
      { gain: [2.67, Math.sqrt(3), 5e-3, 1e-9], phase: [41.7, Math.sqrt(Math.cbrt(9) - 1), 5e-2, 1e-9] },
    ],
  ];

  it.each(LOOPS)('%s', (_name, curve, expected) => {
    const found = marginsOf(curve);
    const compare = (at: { value: number; omega: number } | null, figure: Figure | undefined, unitOf = 1) => {
      if (figure === undefined) return;
      expect(Math.abs(present(at).value / unitOf - figure[0])).toBeLessThan(figure[2]);
      expect(Math.abs(present(at).omega - figure[1])).toBeLessThan(figure[3]);
    };
    compare(found.gainMargin, expected.gain);
    compare(found.phaseMargin, expected.phase, DEGREE);
    compare(found.modulusMargin, expected.modulus);
  });

  it('a flexible structure with three crossovers', () => {
    const found = marginsOf(continuous([35, 3.5, 8.75], [1, 1.03, 101.1862, 23.81176, 100.228, 1]));
    expect(found.crossovers).toHaveLength(3);
    expect(Math.abs(present(found.gainMargin).value - 2.2716)).toBeLessThan(6e-5);
    expect(Math.abs(present(found.gainMargin).omega - 10.0053)).toBeLessThan(6e-5);
    expect(Math.abs(present(found.phaseMargin).value / DEGREE - 97.594)).toBeLessThan(6e-4);
    expect(Math.abs(present(found.phaseMargin).omega - 0.085)).toBeLessThan(6e-5);
    expect(Math.abs(found.modulusMargin.value - 0.5591)).toBeLessThan(6e-5);
    expect(Math.abs(found.modulusMargin.omega - 9.9918)).toBeLessThan(6e-5);
  });

  it('200/(s³ + 21s² + 20s) crosses the real axis at √20 rad/s with a margin of 2.1', () => {
    const found = marginsOf(continuous([200], [1, 21, 20, 0]));
    expect(Math.abs(present(found.gainMargin).omega - 4.47213595)).toBeLessThan(1e-7);
    expect(Math.abs(present(found.gainMargin).value - 2.1)).toBeLessThan(1e-8);
  });

  it('a loop of three integrators and two zeros needs at least 1/16 of its gain (exact)', () => {
    const found = marginsOf(continuous([1, 0.2, 0.01], [1, 1, 0, 0, 0]));
    expect(found.gainMargin).toBeNull();
    expect(present(found.gainReduction).value).toBeCloseTo(0.0625, 9);
  });

  // Sampled behind a zero-order hold, by the same file.
  it.each([
    {
      name: '2/(s³ + 3s² + 2s), 10 ms',
      curve: sampled(2, [1, 3, 2, 0], 0.01),
      period: 0.01,
      expected: [2.955761, 32.398492, 0.429535, 1.403725, 0.749367, 0.923898],
      tolerance: 2e-5,
    },
    {
      name: '2/(s + 1)³, 100 ms',
      curve: sampled(2, [1, 3, 3, 1], 0.1),
      period: 0.1,
      expected: [3.4927, 65.4212, 0.5763, 1.6283, 0.76625, 1.2019],
      tolerance: 1e-4,
    },
  ])('$name, sampled', ({ curve, period, expected, tolerance }) => {
    const { gainMargin, phaseMargin, modulusMargin } = marginsOf(curve, Math.PI / period);
    const found = [
      present(gainMargin).value,
      present(phaseMargin).value / DEGREE,
      modulusMargin.value,
      present(gainMargin).omega,
      present(phaseMargin).omega,
      modulusMargin.omega,
    ];
    found.forEach((value, k) => {
      expect(Math.abs(value / elementAt(expected, k) - 1)).toBeLessThan(tolerance);
    });
  });
});

describe('margins of textbook loops', () => {
  // Åström, Hägglund, PID Controllers, 2nd ed. 1995: ultimate gain and period of 1/(s + 1)³ (from memory; exact: 8 and 2π/√3).
  it('1/(s + 1)³ oscillates at a gain of 8 with a period of 3.63 s', () => {
    const { gainMargin } = marginsOf(continuous([1], [1, 3, 3, 1]));
    expect(present(gainMargin).value).toBeCloseTo(8, 9);
    expect(Math.abs((2 * Math.PI) / present(gainMargin).omega - 3.63)).toBeLessThan(5e-3);
  });

  // Kessler 1955 and 1958; Umland & Safiuddin, IEEE Trans. Industry Applications 26(3), 1990 (from memory).
  it('the magnitude optimum 1/(2Ts(1 + Ts)) has 65.5°', () => {
    const { phaseMargin } = marginsOf(continuous([1], [2, 2, 0]));
    expect(Math.abs(present(phaseMargin).value / DEGREE - 65.5)).toBeLessThan(0.1);
  });

  it('the symmetrical optimum (1 + 4Ts)/(8T²s²(1 + Ts)) has 36.87° at 1/(2T)', () => {
    const { phaseMargin } = marginsOf(continuous([4, 1], [8, 8, 0, 0]));
    expect(Math.abs(present(phaseMargin).value / DEGREE - 36.87)).toBeLessThan(0.01);
    expect(present(phaseMargin).omega).toBeCloseTo(0.5, 9);
  });

  // Definition: the delay margin is what takes the phase margin away at the crossover (Landau, Zito, Digital Control Systems, 2006, 2.6).
  it('an integrator 1/s may wait for π/2 s and no longer', () => {
    const integrator = continuous([1], [1, 0]);
    const { delayMargin } = marginsOf(integrator);
    expect(present(delayMargin).value).toBeCloseTo(Math.PI / 2, 9);
    const late: Curve = (omega) => times(integrator(omega), unit(-omega * present(delayMargin).value));
    expect(present(marginsOf(late).phaseMargin).value).toBeCloseTo(0, 8);
  });

  // Against brute force on a grid a thousand times as fine.
  it('finds the least distance to −1 between the points of the grid', () => {
    const curve = continuous([1, 0.1], [1, 1, 0, 0]);
    const { modulusMargin } = margins(curve, logSpaced(1e-3, 1e3, 200));
    const fine = logSpaced(modulusMargin.omega * 0.9, modulusMargin.omega * 1.1, 100_000);
    const brute = Math.min(...fine.map((omega) => magnitude(plus({ re: 1, im: 0 }, curve(omega)))));
    expect(modulusMargin.value).toBeLessThanOrEqual(brute);
    expect(modulusMargin.value).toBeGreaterThan(brute - 1e-9);
  });
});

describe('delay of a sampled loop', () => {
  // One period to compute and half a period of the hold, e.g. Holmes, Lipo, McGrath, Kong, IEEE Trans. Power Electronics 24(7), 2009 (from
  // memory): 540° · f · Ts. The samples of an integrator's ramp stand sin(x)/x, x = ωTs/2, above the sine they are taken for.
  it('is one and a half periods: 54° at a tenth of the rate', () => {
    const period = 1e-4;
    const { phi, gamma } = zeroOrderHold(Matrix.of([[0]]), Matrix.of([[1]]), period);
    const delayed = Matrix.of([
      [phi.get(0, 0), gamma.get(0, 0)],
      [0, 0],
    ]);
    const transfer = new Transfer(delayed, Matrix.of([[0], [1]]), Float64Array.of(1, 0));
    const omega = 2 * Math.PI * 1000;
    const ratio = times(elementAt(transfer.at(unit(omega * period)), 0), { re: 0, im: omega });
    expect(phase(ratio) / DEGREE).toBeCloseTo(-54, 9);
    expect(Math.abs(1 / magnitude(ratio) - 0.98363164)).toBeLessThan(1e-6);
  });
});
