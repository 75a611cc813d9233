import type { Parameters } from '../../shared/core/parameters/table.ts';

/** Rubber buffers behind the travel limits: where they begin beyond the limit (m), stiffness (N/m), damping (N·s/m). */
const BUFFER_GAP = 3e-3;
const BUFFER_STIFFNESS = 1e6;
const BUFFER_DAMPING = 2e3;

/** The two buffers: penetration s gives k s + c s', never pulling. */
export class EndStops {
  /** Results of the last call of `evaluate`: N along +x, W. */
  force = 0;
  loss = 0;

  private low = 0;
  private high = 0;

  configure(p: Parameters): void {
    this.low = p.travelMin - BUFFER_GAP;
    this.high = p.travelMax + BUFFER_GAP;
  }

  evaluate(x2: number, v2: number): void {
    if (x2 >= this.low && x2 <= this.high) {
      this.force = 0;
      this.loss = 0;
      return;
    }
    const s = x2 > this.high ? x2 - this.high : x2 - this.low;
    const spring = -BUFFER_STIFFNESS * s;
    const force = spring - BUFFER_DAMPING * v2;
    this.force = force * s < 0 ? force : 0;
    this.loss = (spring - this.force) * v2;
  }

  energy(x2: number): number {
    const s = Math.max(x2 - this.high, this.low - x2, 0);
    return 0.5 * BUFFER_STIFFNESS * s * s;
  }
}
