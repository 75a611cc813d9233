import { MOVE_FIGURES, type MoveFigureName, moveFigureText } from '../../figures/moveFigures.ts';
import type { MoveOutcome } from '../../study/outcome.ts';
import { movesOf } from '../read.ts';
import { type FigureRow, figureRow, type Given } from './row.ts';

type Name = MoveFigureName & keyof MoveOutcome;

/** A figure of the moves, named and measured as for a single one: the worst of all of them. */
export function moveRow(
  name: Name,
  given: Pick<Given, 'id' | 'group' | 'resolution'> & Partial<FigureRow>,
): FigureRow {
  const { label, unit, better, definition, absent } = MOVE_FIGURES[name];
  return figureRow({
    label,
    unit,
    absent,
    better: better === 'more' ? 'more' : 'less',
    definition: `${definition} The worst of all moves.`,
    of: (candidate) => movesOf(candidate)?.[name] ?? null,
    text: (value) => moveFigureText(name, value),
    ...given,
  });
}
