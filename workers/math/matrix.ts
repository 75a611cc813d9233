import { valueAt } from '../../shared/core/at.ts';

/** A dense real matrix, stored row by row. Rows and columns count from 0. */
export class Matrix {
  readonly data: Float64Array;
  readonly rows: number;
  readonly cols: number;

  /** Zeros; or the elements given, row by row, which are kept and not copied. */
  constructor(rows: number, cols: number, data = new Float64Array(rows * cols)) {
    this.rows = rows;
    this.cols = cols;
    this.data = data;
  }

  static identity(n: number): Matrix {
    const result = new Matrix(n, n);
    for (let i = 0; i < n; i++) result.set(i, i, 1);
    return result;
  }

  /** From rows of equal length, one at least. */
  static of(rows: readonly (readonly number[])[]): Matrix {
    const [first = []] = rows;
    return new Matrix(rows.length, first.length, Float64Array.from(rows.flat()));
  }

  /** @throws RangeError when the element lies outside */
  get(i: number, j: number): number {
    return valueAt(this.data, i * this.cols + j);
  }

  set(i: number, j: number, value: number): void {
    this.data[i * this.cols + j] = value;
  }

  add(i: number, j: number, value: number): void {
    const k = i * this.cols + j;
    this.data[k] = valueAt(this.data, k) + value;
  }

  /** The row itself, not a copy. */
  row(i: number): Float64Array {
    return this.data.subarray(i * this.cols, (i + 1) * this.cols);
  }

  copy(): Matrix {
    return new Matrix(this.rows, this.cols, this.data.slice());
  }

  /** What a function makes of each element. */
  mapped(f: (value: number) => number): Matrix {
    return new Matrix(this.rows, this.cols, this.data.map(f));
  }

  transposed(): Matrix {
    const result = new Matrix(this.cols, this.rows);
    for (let i = 0; i < this.rows; i++) for (let j = 0; j < this.cols; j++) result.set(j, i, this.get(i, j));
    return result;
  }

  /** The product with a matrix that has as many rows as this has columns. */
  times(other: Matrix): Matrix {
    const result = new Matrix(this.rows, other.cols);
    for (let i = 0; i < this.rows; i++) {
      for (let k = 0; k < this.cols; k++) {
        const factor = this.get(i, k);
        if (factor === 0) continue;
        for (let j = 0; j < other.cols; j++) result.add(i, j, factor * other.get(k, j));
      }
    }
    return result;
  }

  /** Copies `block` to where its first element stands at (i, j). */
  place(block: Matrix, i: number, j: number): void {
    for (let k = 0; k < block.rows; k++) this.data.set(block.row(k), (i + k) * this.cols + j);
  }

  /** A copy of so many rows and columns from (i, j) on. */
  block(i: number, j: number, rows: number, cols: number): Matrix {
    const result = new Matrix(rows, cols);
    for (let k = 0; k < rows; k++) {
      const from = (i + k) * this.cols + j;
      result.row(k).set(this.data.subarray(from, from + cols));
    }
    return result;
  }
}
