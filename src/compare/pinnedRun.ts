import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { History } from '../history/history.ts';
import type { Laid } from './ghost.ts';
import type { FinishedMove, LoggedMove, MoveLog } from './moveLog.ts';

/** The last cycle of a run, kept to be compared with. */
export interface PinnedRun extends Laid {
  readonly title: string;
  readonly parameters: Parameters;
  /** Of one cycle of the program, or as many as there were. */
  readonly moves: readonly FinishedMove[];
}

/** Null before the first move has finished. */
export function pinRun(history: History, log: MoveLog, scene: Scene): PinnedRun | null {
  const cycle = movesPerCycle(scene);
  const moves = lastInARow(log.finished, cycle);
  const [first, last] = [moves.at(0), moves.at(-1)];
  if (!first || !last) return null;
  const from = first.start;
  const to = last.start + last.figures.duration;
  const { title, parameters } = scene;
  const recorded = { history: history.excerpt(from, to), from, to };
  return { title, parameters, moves, ...recorded, firstMove: first.index, movesPerCycle: cycle };
}

/** Moves after which the program of a scene repeats itself. */
export function movesPerCycle({ parameters: p, moves }: Scene): number {
  switch (p.program) {
    case 'shuttle':
    case 'scan':
    case 'step':
      return 2;
    case 'staircase':
      return 2 * p.stairCount;
    case 'list':
      return Math.max(1, moves.length);
    default:
      return 1;
  }
}

/** The move of the pinned cycle that another one, by its number, repeats; null if that one was not pinned. */
export function counterpart(
  { moves, movesPerCycle: cycle }: PinnedRun,
  { index }: LoggedMove,
): FinishedMove | null {
  return moves.find((move) => (move.index - index) % cycle === 0) ?? null;
}

function lastInARow(moves: readonly FinishedMove[], max: number): FinishedMove[] {
  const newest = moves.at(-1)?.index ?? 0;
  const count = moves.length;
  return moves.filter((move, i) => i >= count - max && move.index === newest - (count - 1 - i));
}
