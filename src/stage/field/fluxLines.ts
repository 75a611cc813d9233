import { ORDERS } from '../../../shared/axis/flux/harmonics.ts';
import type { MotorFlux } from '../../../shared/axis/flux/motorFlux.ts';
import { valueAt } from '../../../shared/core/at.ts';

/** What the currents and the position of the motor make of the field. */
export interface FluxState {
  /** Of the left edge of the picture from the middle of a north pole, m. */
  readonly left: number;
  /** Sheet of current, A/m: in phase with the field, which gives force, and across it. */
  readonly force: number;
  readonly across: number;
  /** Factor on the magnets, which are weaker when warm. */
  readonly magnet: number;
}

/**
 * The flux function of magnets and currents on a grid, and its level lines. Between two lines flows the same flux; around a shaft that is
 * the flux of the whole ring.
 */
export class FluxLines {
  /** Flux between two lines, T·m or T·m². */
  readonly #step: number;
  readonly #columns: number;
  readonly #rows: number;
  readonly #width: number;
  readonly #polePitch: number;
  readonly #magnets: Float64Array;
  readonly #sheet: Float64Array;
  readonly #values: Float64Array;

  /** `step` is the flux between two lines; `low` to `high` is drawn, `width` metres of it. */
  constructor(
    flux: MotorFlux,
    { low, high }: { readonly low: number; readonly high: number },
    width: number,
    step: number,
    [columns, rows]: readonly [number, number],
    isRound: boolean,
  ) {
    this.#step = step;
    this.#columns = columns;
    this.#rows = rows;
    this.#width = width;
    this.#polePitch = flux.polePitch;
    const heights = Array.from({ length: rows }, (_, j) => low + ((high - low) * j) / (rows - 1));
    const distances = heights.map((y) => (isRound ? Math.max(Math.abs(y), 1e-6) : y));
    this.#magnets = Float64Array.from(
      distances.flatMap((y) => ORDERS.map((n) => flux.magnets(n, y).potential)),
    );
    this.#sheet = Float64Array.from(distances.map((y) => flux.sheetPotential(y)));
    this.#values = new Float64Array(columns * rows);
  }

  /** Draws each line in short strokes: `stroke(x1, y1, x2, y2)` in shares of width and height, y upwards. */
  trace(state: FluxState, stroke: (x1: number, y1: number, x2: number, y2: number) => void): void {
    this.#evaluate(state);
    const [nx, ny] = [this.#columns, this.#rows];
    const values = this.#values;
    for (let j = 0; j < ny - 1; j++)
      for (let i = 0; i < nx - 1; i++) {
        const corner = j * nx + i;
        const [a, b] = [valueAt(values, corner), valueAt(values, corner + 1)];
        const [d, c] = [valueAt(values, corner + nx), valueAt(values, corner + nx + 1)];
        const first = Math.ceil(Math.min(a, b, c, d) / this.#step - 0.5);
        const last = Math.floor(Math.max(a, b, c, d) / this.#step - 0.5);
        for (let level = first; level <= last; level++)
          crossCell((level + 0.5) * this.#step, a, b, c, d, (x1, y1, x2, y2) =>
            stroke((i + x1) / (nx - 1), (j + y1) / (ny - 1), (i + x2) / (nx - 1), (j + y2) / (ny - 1)),
          );
      }
  }

  #evaluate({ left, force, across, magnet }: FluxState): void {
    const nx = this.#columns;
    const perColumn = this.#width / (nx - 1);
    const orders = ORDERS.length;
    const sines = new Float64Array(orders);
    for (let i = 0; i < nx; i++) {
      const phase = (Math.PI * (left + i * perColumn)) / this.#polePitch;
      ORDERS.forEach((n, m) => {
        sines[m] = magnet * Math.sin(n * phase);
      });
      const sheet = -force * Math.cos(phase) - across * Math.sin(phase);
      for (let j = 0; j < this.#rows; j++) {
        let value = sheet * valueAt(this.#sheet, j);
        for (let m = 0; m < orders; m++) value += valueAt(this.#magnets, j * orders + m) * valueAt(sines, m);
        this.#values[j * nx + i] = value;
      }
    }
  }
}

/** A level through a cell with the values a, b at its lower corners and d, c above them (marching squares). */
function crossCell(
  level: number,
  a: number,
  b: number,
  c: number,
  d: number,
  stroke: (x1: number, y1: number, x2: number, y2: number) => void,
): void {
  const cuts: number[] = [];
  const share = (from: number, to: number) => (level - from) / (to - from);
  if (a < level !== b < level) cuts.push(share(a, b), 0);
  if (b < level !== c < level) cuts.push(1, share(b, c));
  if (d < level !== c < level) cuts.push(share(d, c), 1);
  if (a < level !== d < level) cuts.push(0, share(a, d));
  for (let k = 0; k + 3 < cuts.length; k += 4)
    stroke(cuts[k] as number, cuts[k + 1] as number, cuts[k + 2] as number, cuts[k + 3] as number);
}
