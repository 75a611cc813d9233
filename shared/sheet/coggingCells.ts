import type { CoggingTable } from '../core/coggingTable.ts';

/** Position and force of each place of the table, with a header, as cells of a CSV file. */
export function coggingTableCells({ from, spacing, forces }: CoggingTable): string[][] {
  return [
    ['encoder position in m', 'force in N'],
    ...forces.map((force, k) => [String(Number((from + k * spacing).toFixed(9))), String(force)]),
  ];
}
