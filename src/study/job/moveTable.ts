import { shortest } from '../../../shared/core/format.ts';
import { type Unit, type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import type { MotionAsked } from '../../../shared/study/motionAsked.ts';
import { element } from '../../ui/dom.ts';

const DIGITS = 5;

/** What was understood of a move list, line by line. */
export function moveTable({ moves }: MotionAsked, units: UnitSystem): HTMLTableElement {
  const q = (value: number, unit: Unit) => shortest(value, unitIn(units, unit), DIGITS);
  const head = ['Move', 'From', 'To', 'In', 'Stand still'];
  return element(
    'table',
    { class: 'dialog-table' },
    element('thead', {}, element('tr', {}, ...head.map((label) => element('th', { scope: 'col' }, label)))),
    element(
      'tbody',
      {},
      ...moves.map(({ from, to, time, dwell }, index) =>
        element(
          'tr',
          {},
          element('th', { scope: 'row' }, String(index + 1)),
          ...[q(from, 'mm'), q(to, 'mm'), q(time, 's'), q(dwell, 's')].map((text) => element('td', {}, text)),
        ),
      ),
    ),
  );
}
