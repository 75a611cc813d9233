import { ACCURACY_ROWS } from './accuracyRows.ts';
import { COST_ROWS } from './costRows.ts';
import { ENERGY_ROWS } from './energyRows.ts';
import { HEAT_ROWS } from './heatRows.ts';
import type { FigureRow } from './row.ts';
import { THROUGHPUT_ROWS } from './throughputRows.ts';

/** The one table of what drives are compared by, in the order a customer asks. */
export const FIGURE_ROWS: readonly FigureRow[] = [
  ...THROUGHPUT_ROWS,
  ...ACCURACY_ROWS,
  ...HEAT_ROWS,
  ...ENERGY_ROWS,
  ...COST_ROWS,
];

/** @throws Error when there is no such row */
export function figure(id: string): FigureRow {
  const found = FIGURE_ROWS.find((row) => row.id === id);
  if (!found) throw new Error(`no figure is called ${id}`);
  return found;
}
