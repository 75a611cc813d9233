/** A dense real matrix, stored row by row. */
export class Matrix {
  readonly data: Float64Array;

  constructor(
    readonly rows: number,
    readonly cols: number,
  ) {
    this.data = new Float64Array(rows * cols);
  }

  static identity(n: number): Matrix {
    const result = new Matrix(n, n);
    for (let i = 0; i < n; i++) result.set(i, i, 1);
    return result;
  }

  /** From rows of equal length. */
  static of(rows: readonly (readonly number[])[]): Matrix {
    const result = new Matrix(rows.length, rows[0]!.length);
    rows.forEach((row, i) => {
      result.data.set(row, i * result.cols);
    });
    return result;
  }

  get(i: number, j: number): number {
    return this.data[i * this.cols + j]!;
  }

  set(i: number, j: number, value: number): void {
    this.data[i * this.cols + j] = value;
  }

  add(i: number, j: number, value: number): void {
    this.data[i * this.cols + j]! += value;
  }

  row(i: number): Float64Array {
    return this.data.subarray(i * this.cols, (i + 1) * this.cols);
  }

  copy(): Matrix {
    const result = new Matrix(this.rows, this.cols);
    result.data.set(this.data);
    return result;
  }

  transposed(): Matrix {
    const result = new Matrix(this.cols, this.rows);
    for (let i = 0; i < this.rows; i++) for (let j = 0; j < this.cols; j++) result.set(j, i, this.get(i, j));
    return result;
  }

  times(other: Matrix): Matrix {
    const result = new Matrix(this.rows, other.cols);
    for (let i = 0; i < this.rows; i++) {
      const row = result.row(i);
      for (let k = 0; k < this.cols; k++) {
        const factor = this.get(i, k);
        if (factor === 0) continue;
        const from = other.row(k);
        for (let j = 0; j < row.length; j++) row[j]! += factor * from[j]!;
      }
    }
    return result;
  }

  /** Copies `block` to where its first element stands at (i, j). */
  place(block: Matrix, i: number, j: number): void {
    for (let k = 0; k < block.rows; k++) this.data.set(block.row(k), (i + k) * this.cols + j);
  }

  block(i: number, j: number, rows: number, cols: number): Matrix {
    const result = new Matrix(rows, cols);
    for (let k = 0; k < rows; k++) {
      const from = (i + k) * this.cols + j;
      result.row(k).set(this.data.subarray(from, from + cols));
    }
    return result;
  }
}

/** x with A x = b, by elimination with row exchange; null when A is singular to working accuracy. */
export function solve(a: Matrix, b: ArrayLike<number>): Float64Array | null {
  const n = a.rows;
  const work = new Matrix(n, n + 1);
  work.place(a, 0, 0);
  for (let i = 0; i < n; i++) work.set(i, n, b[i]!);
  for (let k = 0; k < n; k++) {
    let pivot = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(work.get(i, k)) > Math.abs(work.get(pivot, k))) pivot = i;
    if (!(Math.abs(work.get(pivot, k)) > 0)) return null;
    if (pivot !== k) {
      const held = work.row(k).slice();
      work.row(k).set(work.row(pivot));
      work.row(pivot).set(held);
    }
    for (let i = k + 1; i < n; i++) {
      const factor = work.get(i, k) / work.get(k, k);
      if (factor !== 0) for (let j = k; j <= n; j++) work.add(i, j, -factor * work.get(k, j));
    }
  }
  const x = new Float64Array(n);
  for (let i = n - 1; i >= 0; i--) {
    let rest = work.get(i, n);
    for (let j = i + 1; j < n; j++) rest -= work.get(i, j) * x[j]!;
    x[i] = rest / work.get(i, i);
  }
  return x;
}
