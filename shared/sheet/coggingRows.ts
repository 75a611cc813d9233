import { changedSinceLearned, tablePeak } from '../core/coggingTable.ts';
import type { Scene } from '../core/scene.ts';
import { onOff } from './gainRows.ts';
import { type SheetSection, setRow } from './row.ts';

const TITLE = 'Cogging compensation';

/** What the controller adds against cogging: size and peak of the learned table, and what it was learned from. */
export function coggingSection({ parameters: p, coggingTable: table }: Scene): SheetSection {
  const section = { id: 'cogging', title: TITLE };
  const state = setRow(TITLE, '', onOff(p.coggingCompensation));
  if (!table) return { ...section, text: [], rows: [state, setRow('Cogging table', '', 'none')] };
  return {
    ...section,
    text: [
      `The force from the table, interpolated linearly, is added to F${p.observer ? ' and to F_k' : ''} at the set or measured position. It was learned from current and encoder position in a slow scan in both directions; the mean of the two leaves out friction. The table itself has zero mean.`,
    ],
    rows: [
      state,
      setRow('Position at which the table is read', '', p.coggingPosition),
      setRow('Forces in the table', '', table.forces.length),
      setRow('First position', 'x_0', 1e3 * table.from, 'mm'),
      setRow('Spacing', 'Δx', 1e3 * table.spacing, 'mm'),
      setRow('Peak force', '', tablePeak(table), 'N'),
      setRow('Speed of the scan', '', 1e3 * table.scanSpeed, 'mm/s'),
      setRow('Learned on this machine', '', changedSinceLearned(table, p).length === 0 ? 'yes' : 'no'),
    ],
  };
}
