import { at } from '../core/at.ts';
import type { Job } from '../study/job.ts';
import type { JudgedCandidate, VerdictCell, VerdictRow } from './judgement.ts';
import type { Shortfall } from './requirements.ts';
import { type FigureRow, isBetter, tie } from './rows/row.ts';
import { FIGURE_ROWS } from './rows/rows.ts';

/** Every figure of every candidate, with what is best in its row and what does not do. */
export function tableOf(
  job: Job,
  candidates: readonly JudgedCandidate[],
  shortfalls: readonly (readonly Shortfall[])[],
): VerdictRow[] {
  return FIGURE_ROWS.map((row) => {
    const values = candidates.map((candidate) => row.of(candidate, job));
    // The best is the best of those that do the job.
    const able = values.map((value, place) => (at(shortfalls, place).length === 0 ? value : null));
    const marks = row.ranked ? marksOf(row, able) : values.map(() => null);
    return {
      id: row.id,
      group: row.group,
      label: row.label,
      unit: row.unit,
      better: row.better,
      definition: row.definition,
      asked: row.asked(job),
      limit: row.limit?.(job) ?? undefined,
      cells: candidates.map((candidate, place) => {
        const value = at(values, place);
        const own = at(shortfalls, place).filter((each) => each.row === row.id);
        return {
          value,
          text: row.text(value),
          cause: value === null ? null : row.cause(candidate, job, null),
          mark: at(marks, place),
          fails: own.length > 0,
          reason: own.length > 0 ? own.map(({ inRow, text }) => inRow ?? text).join('; ') : null,
        };
      }),
    };
  });
}

/** The best alone, or all that cannot be told from it; a candidate by itself is neither. */
function marksOf(row: FigureRow, values: readonly (number | null)[]): VerdictCell['mark'][] {
  const known = values.filter((value) => value !== null);
  if (known.length < 2) return values.map(() => null);
  const best = known.reduce((max, value) => (isBetter(row, value, max) ? value : max));
  const isTop = (value: number | null) => value !== null && tie(row, value, best);
  const alone = values.filter(isTop).length === 1;
  return values.map((value) => (isTop(value) ? (alone ? 'best' : 'tie') : null));
}
