import { shortest } from '../../../shared/core/format.ts';
import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import { type Unit, unitIn } from '../../../shared/core/units.ts';
import type { MotionAsked } from '../../../shared/study/motionAsked.ts';
import { figureTable } from '../../ui/figureTable.ts';

const DIGITS = 5;

/** What was understood of a move list, line by line. */
export function moveTable({ moves }: MotionAsked, units: UnitSystem): HTMLTableElement {
  const q = (value: number, unit: Unit) => shortest(value, unitIn(units, unit), DIGITS);
  const cuts = moves.some(({ cutting }) => cutting > 0);
  return figureTable({
    class: 'dialog-table',
    columns: ['Move', 'From', 'To', 'In', 'Stand still', ...(cuts ? ['Process force'] : [])],
    rows: moves.map(({ from, to, time, dwell, cutting }, index) => ({
      head: String(index + 1),
      cells: [q(from, 'mm'), q(to, 'mm'), q(time, 's'), q(dwell, 's'), ...(cuts ? [q(cutting, 'N')] : [])],
    })),
  });
}
