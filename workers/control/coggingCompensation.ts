import { valueAt } from '../../shared/core/at.ts';
import type { CoggingTable } from '../../shared/core/coggingTable.ts';

/** Force against cogging from a learned table: straight between its places, falling to zero over one spacing beyond its ends. */
export class CoggingCompensation {
  readonly #from: number = 0;
  readonly #perSpacing: number = 0;
  readonly #forces: Float64Array;

  constructor(table: CoggingTable | undefined) {
    this.#from = table ? table.from - table.spacing : 0;
    this.#perSpacing = table ? 1 / table.spacing : 0;
    this.#forces = Float64Array.from(table ? [0, ...table.forces, 0] : [0, 0]);
  }

  /** N, at a position in m. */
  force(position: number): number {
    const place = (position - this.#from) * this.#perSpacing;
    if (!(place > 0 && place < this.#forces.length - 1)) return 0;
    const k = Math.floor(place);
    const before = valueAt(this.#forces, k);
    return before + (place - k) * (valueAt(this.#forces, k + 1) - before);
  }
}
