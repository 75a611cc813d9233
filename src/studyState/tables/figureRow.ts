import { type Figure, type FigureOf, figureText } from '../../../shared/figures/figure.ts';
import type { Cell, TableRow } from './table.ts';

/** A row of values of one figure. `fails` says which of them are not what the job asks for. */
export function figureRow(
  id: string,
  figure: Figure,
  values: readonly (number | null)[],
  fails: (value: number) => boolean = () => false,
): TableRow {
  const { label, definition } = figure;
  const cells = values.map(
    (value): Cell => ({
      text: figureText(figure, value),
      isAbsent: value === null,
      marks: value !== null && fails(value) ? ['fails'] : [],
    }),
  );
  return { id, label, definition, cells };
}

/** A row for each figure of what stands in each column; `absent` is said of a column in which there is nothing. */
export function figureRows<T>(
  prefix: string,
  figures: Readonly<Record<string, FigureOf<T>>>,
  columns: readonly (T | null)[],
  { absent, fails = {} }: { absent: (column: number) => string; fails?: Fails },
): TableRow[] {
  return Object.entries(figures).map(([name, figure]) => {
    const values = columns.map((each) => (each === null ? null : figure.of(each)));
    const row = figureRow(`${prefix}-${name}`, figure, values, fails[name]);
    const cells = row.cells.map((cell, k) => (columns[k] === null ? { text: absent(k) } : cell));
    return { ...row, cells };
  });
}

/** By the name of a figure: whether a value is not what the job asks for. */
export type Fails = Readonly<Record<string, (value: number) => boolean>>;
