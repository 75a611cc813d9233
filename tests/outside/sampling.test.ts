import { describe, expect, it } from 'vitest';
import { designLowpass, designNotch } from '../../shared/axis/loop/biquadDesign.ts';
import { at as elementAt, valueAt } from '../../shared/core/at.ts';
import { biquadResponse } from '../../workers/analysis/positionController.ts';
import { Biquad } from '../../workers/control/biquad.ts';
import { magnitude, phase, unit } from '../../workers/math/complex.ts';
import { hessenbergEigenvalues } from '../../workers/math/eigenvalues.ts';
import { hessenbergForm } from '../../workers/math/hessenberg.ts';
import { Matrix } from '../../workers/math/matrix.ts';
import { Transfer } from '../../workers/math/transfer.ts';
import { zeroOrderHold } from '../../workers/math/zeroOrderHold.ts';

const eigenvaluesOf = (a: Matrix) => hessenbergEigenvalues(hessenbergForm(a).h);

/** Monic polynomial with the eigenvalues of A as roots, highest power first (Faddeev, LeVerrier). */
function characteristic(a: Matrix): number[] {
  const n = a.rows;
  const coefficients = [1];
  let m = new Matrix(n, n);
  for (let k = 1; k <= n; k++) {
    m = a.times(m);
    for (let i = 0; i < n; i++) m.add(i, i, elementAt(coefficients, k - 1));
    const product = a.times(m);
    let trace = 0;
    for (let i = 0; i < n; i++) trace += product.get(i, i);
    coefficients.push(-trace / k);
  }
  return coefficients;
}

describe('zero-order hold', () => {
  // github.com/scipy/scipy, scipy/signal/tests/test_cont2discrete.py (BSD licence)
  it('A = I, B = 0.5, 0.5 s', () => {
    const { phi, gamma } = zeroOrderHold(Matrix.identity(2), Matrix.of([[0.5], [0.5]]), 0.5);
    [1.648721270700128, 0, 0, 1.648721270700128].forEach((value, k) => {
      expect(phi.data[k]).toBeCloseTo(value, 12);
    });
    expect(gamma.get(0, 0)).toBeCloseTo(0.32436063535, 11);
    expect(gamma.get(1, 0)).toBeCloseTo(0.32436063535, 11);
  });

  // The same file: (0.25s² + 0.25s + 0.5)/(0.75s² + 0.75s + 1) at 0.5 s.
  it('a second-order transfer function', () => {
    const a = Matrix.of([
      [0, 1],
      [-1 / 0.75, -1],
    ]);
    const { phi, gamma } = zeroOrderHold(a, Matrix.of([[0], [1]]), 0.5);
    const den = characteristic(phi);
    [1, -1.35139404972, 0.606530659713].forEach((value, k) => {
      expect(den[k]).toBeCloseTo(value, 11);
    });
    // num = c adj(zI − Φ) Γ + d den, c = (remainder of the division)/0.75, d = 1/3
    const c = [(0.5 - 1 / 3) / 0.75, 0];
    const d = 1 / 3;
    const zeroth = elementAt(c, 0) * gamma.get(0, 0) + elementAt(c, 1) * gamma.get(1, 0);
    const first =
      elementAt(c, 0) * (phi.get(0, 1) * gamma.get(1, 0) - phi.get(1, 1) * gamma.get(0, 0)) +
      elementAt(c, 1) * (phi.get(1, 0) * gamma.get(0, 0) - phi.get(0, 0) * gamma.get(1, 0));
    [d, d * elementAt(den, 1) + zeroth, d * elementAt(den, 2) + first].forEach((value, k) => {
      expect(value).toBeCloseTo(elementAt([0.333333333333, -0.427419169439, 0.221654141101], k), 11);
    });
  });

  // Messner, Tilbury et al., Control Tutorials for MATLAB and Simulink, University of Michigan, DC Motor Position: poles, and the pole, zero
  // and gain behind a hold of 1 ms (pole 0.9425 from memory). Its electrical pole of 0.7 µs makes it stiff.
  describe('a motor with a very fast electrical pole', () => {
    const [J, b, K, R, L] = [3.2284e-6, 3.5077e-6, 0.0274, 4, 2.75e-6];
    const a = Matrix.of([
      [0, 1, 0],
      [0, -b / J, K / J],
      [0, -K / L, -R / L],
    ]);
    const input = Matrix.of([[0], [0], [1 / L]]);

    it('has its published poles', () => {
      const poles = Array.from(eigenvaluesOf(a).re).sort((x, y) => x - y);
      expect(Math.abs(elementAt(poles, 0) + 1.454e6)).toBeLessThan(600);
      expect(Math.abs(elementAt(poles, 1) + 59.23)).toBeLessThan(0.006);
      expect(Math.abs(elementAt(poles, 2))).toBeLessThan(1e-9);
    });

    it('has its published pole, zero and gain when sampled', () => {
      const { phi, gamma } = zeroOrderHold(a, input, 1e-3);
      const poles = Array.from(eigenvaluesOf(phi).re).sort((x, y) => y - x);
      expect(poles[0]).toBeCloseTo(1, 9);
      expect(Math.abs(elementAt(poles, 1) - 0.9425)).toBeLessThan(6e-5);
      expect(Math.abs(elementAt(poles, 2))).toBeLessThan(1e-9);
      // First two samples of the impulse response: g1, and g1 (p1 + p2 − zero).
      const [g1, g2] = [gamma.get(0, 0), phi.times(gamma).get(0, 0)];
      expect(Math.abs(g1 - 0.0010389)).toBeLessThan(6e-8);
      expect(Math.abs(elementAt(poles, 0) + elementAt(poles, 1) - g2 / g1 + 0.9831)).toBeLessThan(6e-5);
    });
  });
});

describe('frequency response of a state space', () => {
  // The same tutorials, DC Motor Speed: 0.0139 at −123.6835° at 10 rad/s.
  it('a motor at 10 rad/s', () => {
    const [J, b, K, R, L] = [0.01, 0.1, 0.01, 1, 0.5];
    const a = Matrix.of([
      [-b / J, K / J],
      [-K / L, -R / L],
    ]);
    const response = elementAt(
      new Transfer(a, Matrix.of([[0], [1 / L]]), Float64Array.of(1, 0)).at({
        re: 0,
        im: 10,
      }),
      0,
    );
    expect(Math.abs(magnitude(response) - 0.0139)).toBeLessThan(5e-5);
    expect(Math.abs((phase(response) * 180) / Math.PI + 123.6835)).toBeLessThan(5e-4);
  });
});

describe('eigenvalues', () => {
  // Companion matrix of (x − 1)(x − 2)…(x − 10), the shorter brother of Wilkinson's polynomial: badly conditioned, known exactly.
  it('of a companion matrix are the roots of its polynomial', () => {
    let coefficients = [1];
    for (let r = 1; r <= 10; r++) {
      coefficients = [...coefficients, 0].map((c, k) => c - r * (coefficients[k - 1] ?? 0));
    }
    const a = new Matrix(10, 10);
    for (let k = 0; k < 10; k++) a.set(0, k, -elementAt(coefficients, k + 1));
    for (let k = 1; k < 10; k++) a.set(k, k - 1, 1);
    const { re, im } = eigenvaluesOf(a);
    Array.from(re)
      .sort((x, y) => x - y)
      .forEach((value, k) => {
        expect(Math.abs(value - (k + 1))).toBeLessThan(1e-6);
      });
    expect(Math.max(...im.map(Math.abs))).toBeLessThan(1e-6);
  });

  // Frank matrix of order 12 (Frank 1958; Golub & Wilkinson, SIAM Review 18(4), 1976): eigenvalues in pairs x, 1/x; largest 32.2289 (from memory).
  it('of the Frank matrix come in reciprocal pairs', () => {
    const n = 12;
    const a = new Matrix(n, n);
    for (let i = 0; i < n; i++) for (let j = Math.max(i - 1, 0); j < n; j++) a.set(i, j, n - Math.max(i, j));
    const values = Array.from(eigenvaluesOf(a).re).sort((x, y) => y - x);
    expect(Math.abs(elementAt(values, 0) - 32.2289)).toBeLessThan(1e-4);
    for (let k = 0; k < 4; k++) expect(elementAt(values, k) * elementAt(values, n - 1 - k)).toBeCloseTo(1, 4);
  });

  // The n-th roots of one: a cyclic shift, which has no eigenvalue to deflate first and needs the exceptional shifts.
  it('of a cyclic shift lie evenly on the unit circle', () => {
    const n = 8;
    const a = new Matrix(n, n);
    for (let i = 0; i < n; i++) a.set(i, (i + 1) % n, 1);
    const { re, im } = eigenvaluesOf(a);
    const angles = Array.from(re, (value, k) => Math.atan2(valueAt(im, k), value)).sort((x, y) => x - y);
    re.forEach((value, k) => {
      expect(Math.hypot(value, valueAt(im, k))).toBeCloseTo(1, 12);
    });
    for (let k = 1; k < n; k++)
      expect(elementAt(angles, k) - elementAt(angles, k - 1)).toBeCloseTo((2 * Math.PI) / n, 10);
  });

  it('of a matrix that is not finite are refused', () => {
    expect(() => hessenbergEigenvalues(Matrix.of([[Number.NaN]]))).toThrow(RangeError);
  });
});

/*
 * github.com/scipy/scipy, scipy/signal/tests/test_filter_design.py (BSD licence). Its notch is prewarped in centre and width, BW = ω0/Q: with
 * β = tan(BW/2) it is ours of depth 0 and D = β/sin ω0.
 */
describe('second-order sections', () => {
  const notch = (frequency: number, q: number, rate: number) => {
    const omega = (2 * Math.PI * frequency) / rate;
    const filter = new Biquad();
    designNotch(filter, frequency, Math.tan(omega / q / 2) / Math.sin(omega), 0, rate);
    return filter;
  };

  it('notch at 0.06 of Nyquist, Q = 30', () => {
    const { b0, b1, b2, a1, a2 } = notch(0.06, 30, 2);
    [b0, b1, b2, a1, a2].forEach((value, k) => {
      const expected = elementAt([0.99686824, -1.9584219, 0.99686824, -1.9584219, 0.99373647], k);
      expect(Math.abs(value - expected)).toBeLessThan(5e-8);
    });
  });

  it('notch at 1500 Hz, Q = 30: −3 dB at 1475 and 1525 Hz, nothing left at 1500 Hz', () => {
    const filter = notch(1500, 30, 10_000);
    const at = (f: number) => magnitude(biquadResponse(filter, unit((2 * Math.PI * f) / 10_000)));
    for (const edge of [1475, 1525]) expect(Math.abs(20 * Math.log10(at(edge)) + 3)).toBeLessThan(0.04);
    expect(at(1500)).toBeLessThan(1e-12);
  });

  // Bilinear transform without prewarping at fs = 0.5 Hz: ours of the frequency that the transform maps to ω.
  const mapped = (omega: number, rate: number) => (rate / Math.PI) * Math.atan(omega / (2 * rate));

  it('bilinear transform of an analogue notch', () => {
    const omega = Math.sqrt(0.174074675307);
    const filter = new Biquad();
    designNotch(filter, mapped(omega, 0.5), 0.184605753262 / (2 * omega), 0, 0.5);
    const { b0, b1, b2, a1, a2 } = filter;
    [b0, b1, b2, a1, a2].forEach((value, k) => {
      const expected = elementAt(
        [0.864128643219, -1.2157757002, 0.864128643219, -1.2157757002, 0.728257286438],
        k,
      );
      expect(Math.abs(value - expected)).toBeLessThan(1e-11);
    });
  });

  it('bilinear transform of an analogue low-pass', () => {
    const omega = Math.sqrt(0.148797327433);
    const filter = new Biquad();
    designLowpass(filter, mapped(omega, 0.5), 0.545522368805 / (2 * omega), 0.5);
    const { b0, b1, b2, a1, a2 } = filter;
    [b0, b1, b2, a1, a2].forEach((value, k) => {
      const expected = elementAt(
        [0.0878212817591, 0.175642563518, 0.0878212817591, -1.0047722097, 0.35605733674],
        k,
      );
      expect(Math.abs(value - expected)).toBeLessThan(1e-11);
    });
  });
});
