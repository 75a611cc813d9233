import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { SegmentCommand } from '../../../shared/motion/setpoint.ts';
import { E_OUT, F2, type State, V2 } from '../state.ts';
import type { Term } from '../term.ts';

/*
 * The process at the tool, on the table along +x, N: F constant; F sin(2πft); F while (t mod 1/f) < t_p; or −F sgn v_set, against
 * the feed. A move of a list adds its own, −F_move sgn v_set. Worked out at each period of the current loop and held over it. Its reaction acts on the base; its work leaves the machine.
 */
export class Process implements Term {
  /** Held over the period, N. */
  force = 0;
  #kind: Parameters['process'] = 'none';
  #constant = 0;
  #omega = 0;
  #period = 0;
  #pulse = 0;

  configure({ process, processForce, processFrequency, processTime }: Parameters): void {
    this.#kind = process;
    this.#constant = processForce;
    this.#omega = 2 * Math.PI * processFrequency;
    this.#period = 1 / processFrequency;
    this.#pulse = processTime;
  }

  get acts(): boolean {
    return this.force !== 0;
  }

  /** Sets the force for the period from a `time` (s) on, under a commanded speed (m/s), with the cutting force of the present move (N). */
  hold(
    { time }: Readonly<{ time: number }>,
    { speed, cutting }: Readonly<Pick<SegmentCommand, 'speed' | 'cutting'>>,
  ): void {
    this.force = this.#lawForce(time, speed);
    if (cutting > 0) this.force -= cutting * Math.sign(speed);
  }

  evaluate(y: Readonly<State>, dy: State): void {
    dy[F2] += this.force;
    dy[E_OUT] -= this.force * y[V2];
  }

  /** N at a time (s) under a commanded speed (m/s). */
  #lawForce(t: number, v: number): number {
    const F = this.#constant;
    switch (this.#kind) {
      case 'none':
        return 0;
      case 'constant':
        return F;
      case 'sine':
        return F * Math.sin(this.#omega * t);
      case 'pulse':
        return t % this.#period < this.#pulse ? F : 0;
      case 'feed':
        return v === 0 ? 0 : -F * Math.sign(v);
    }
  }
}
