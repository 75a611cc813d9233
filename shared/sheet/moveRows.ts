import { ranged } from '../core/format.ts';
import type { Parameters } from '../core/parameters/table.ts';
import { siUnit } from '../core/units.ts';
import { MOVE_FIGURE_NAMES, MOVE_FIGURES, moveFigureText } from '../figures/moveFigures.ts';
import type { MoveFigures } from '../protocol/axis.ts';
import { type SheetSection, setRow } from './row.ts';

/** Figures of one simulated move with these gains, to compare with the real axis. */
export function moveSection(move: MoveFigures, p: Parameters): SheetSection {
  return {
    id: 'move',
    title: 'Figures of a simulated move',
    text: [`Program: ${p.program}. Window: ± ${ranged(p.window, 'm')}. Ratios are given as fractions of 1.`],
    rows: MOVE_FIGURE_NAMES.map((name) => {
      const { label, unit, absent, definition } = MOVE_FIGURES[name];
      const value = move[name];
      return {
        ...setRow(label, '', value ?? absent, value === null ? '' : siUnit(unit)),
        text: moveFigureText(name, value),
        how: definition,
      };
    }),
  };
}
