import { positionRate } from '../../shared/core/crossChecks.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { cycleSegments } from '../../shared/motion/cycle.ts';

/** How long before an arrival, and after it, one looks at it, as shares of the move that ends with it. */
const BEFORE = 0.05;
const AFTER = 0.2;

/** Around an arrival, s. */
export interface ArrivalSpan {
  readonly from: number;
  readonly to: number;
}

/** The arrivals of a program, from its start on. Each segment begins at a sample of the position loop, as the axis has it. */
export class Arrivals {
  readonly #spans: readonly ArrivalSpan[];
  readonly #cycle: number;

  constructor({ parameters: p, moves }: Scene) {
    const rate = positionRate(p);
    const spans: ArrivalSpan[] = [];
    let time = 0;
    for (const { segment } of cycleSegments(p, moves)) {
      const { moving, duration } = segment;
      time += Math.ceil((duration - 1e-9) * rate) / rate;
      if (moving) spans.push({ from: time - BEFORE * duration, to: time + AFTER * duration });
    }
    this.#spans = spans;
    this.#cycle = time;
  }

  /** The span of whichever of several programs arrives first; null where none arrives. */
  static first(programs: readonly Arrivals[], time: number): ArrivalSpan | null {
    let first: ArrivalSpan | null = null;
    for (const program of programs) {
      const span = program.at(time);
      if (span && (first === null || span.from < first.from)) first = span;
    }
    return first;
  }

  /** The span in which a time is, or the next; null where nothing arrives. A span ends with the next move’s at the latest. */
  at(time: number): ArrivalSpan | null {
    const cycle = this.#cycle;
    if (this.#spans.length === 0 || !Number.isFinite(cycle) || cycle <= 0) return null;
    const first = Math.max(0, Math.floor(time / cycle) - 1);
    for (let round = first; round < first + 3; round++) {
      for (const { from, to } of this.#spans) {
        const begin = round * cycle;
        if (time < begin + to) return { from: begin + from, to: begin + to };
      }
    }
    return null;
  }
}
