/**
 * Discrete Fourier transform Σ x_k exp(−2πjnk/N) in place, N a power of two.
 * Source: Cooley, Tukey, Mathematics of Computation 19, 1965; decimation in time.
 *
 * @throws RangeError when N is not a power of two
 */
export function fourier(re: Float64Array, im: Float64Array): void {
  const n = re.length;
  if (n === 0 || (n & (n - 1)) !== 0) throw new RangeError(`length is ${n}; it must be a power of two.`);
  for (let i = 1, j = 0; i < n; i++) {
    let bit = n >> 1;
    for (; j & bit; bit >>= 1) j ^= bit;
    j ^= bit;
    if (i < j) {
      [re[i], re[j]] = [re[j]!, re[i]!];
      [im[i], im[j]] = [im[j]!, im[i]!];
    }
  }
  const cos = new Float64Array(n / 2);
  const sin = new Float64Array(n / 2);
  for (let k = 0; k < n / 2; k++) {
    cos[k] = Math.cos((2 * Math.PI * k) / n);
    sin[k] = -Math.sin((2 * Math.PI * k) / n);
  }
  for (let half = 1; half < n; half *= 2) {
    const stride = n / (2 * half);
    for (let start = 0; start < n; start += 2 * half) {
      for (let k = 0; k < half; k++) {
        const [c, s] = [cos[k * stride]!, sin[k * stride]!];
        const [i, j] = [start + k, start + k + half];
        const tr = re[j]! * c - im[j]! * s;
        const ti = re[j]! * s + im[j]! * c;
        re[j] = re[i]! - tr;
        im[j] = im[i]! - ti;
        re[i]! += tr;
        im[i]! += ti;
      }
    }
  }
}
