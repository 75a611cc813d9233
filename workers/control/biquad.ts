/*
 * Second-order section (b0 + b1 z⁻¹ + b2 z⁻²)/(1 + a1 z⁻¹ + a2 z⁻²) in direct form I, whose memory is past inputs and outputs: coefficients
 * may change while it runs without a kick at standstill. Designed by the bilinear transform, prewarped so that the
 * frequency asked for is met exactly (Franklin, Powell, Workman, Digital Control of Dynamic Systems, sec. 6.1).
 */
export class Biquad {
  b0 = 1;
  b1 = 0;
  b2 = 0;
  a1 = 0;
  a2 = 0;
  private x1 = 0;
  private x2 = 0;
  private y1 = 0;
  private y2 = 0;

  /** Passes everything; the memory goes on, so that switching a filter in is smooth. */
  setThrough(): void {
    this.b0 = 1;
    this.b1 = 0;
    this.b2 = 0;
    this.a1 = 0;
    this.a2 = 0;
  }

  /** (s² + 2 depth D ω s + ω²)/(s² + 2 D ω s + ω²), ω = 2π frequency, sampled at rate (Hz). */
  setNotch(frequency: number, damping: number, depth: number, rate: number): void {
    this.set(1, depth * damping, 1, damping, frequency, rate);
  }

  /** ω²/(s² + 2 D ω s + ω²), ω = 2π frequency, sampled at rate (Hz). */
  setLowpass(frequency: number, damping: number, rate: number): void {
    this.set(0, 0, 1, damping, frequency, rate);
  }

  step(x: number): number {
    const y = this.b0 * x + this.b1 * this.x1 + this.b2 * this.x2 - this.a1 * this.y1 - this.a2 * this.y2;
    this.x2 = this.x1;
    this.x1 = x;
    this.y2 = this.y1;
    this.y1 = y;
    return y;
  }

  reset(): void {
    this.x1 = 0;
    this.x2 = 0;
    this.y1 = 0;
    this.y2 = 0;
  }

  /** (n2 s² + 2 n1 s + n0)/(s² + 2 D s + 1) with s in units of ω. */
  private set(n2: number, n1: number, n0: number, damping: number, frequency: number, rate: number): void {
    const c = 1 / Math.tan((Math.PI * frequency) / rate);
    const a0 = c * c + 2 * damping * c + 1;
    this.b0 = (n2 * c * c + 2 * n1 * c + n0) / a0;
    this.b1 = (2 * (n0 - n2 * c * c)) / a0;
    this.b2 = (n2 * c * c - 2 * n1 * c + n0) / a0;
    this.a1 = (2 * (1 - c * c)) / a0;
    this.a2 = (c * c - 2 * damping * c + 1) / a0;
  }
}
