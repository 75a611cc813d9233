import { at } from '../core/at.ts';
import type { Judgement, VerdictRow } from './judgement.ts';
import { listed } from './text.ts';

/** What is told first of a comparison: what the choice goes by. Less is better in each. */
const DECISIVE = ['total', 'inPlace', 'winding'];
/** Besides, what the job is about where it sets a limit to it; else the reserve. */
const ASKED = ['ripple', 'increment'];
const RESERVE = 'utilisation';

/** A figure of all drives with what it says, to be read in a few seconds. */
export interface DecisiveRow {
  readonly row: VerdictRow;
  readonly sentence: string;
}

/** The few rows that tell a choice, each with a sentence; `letters` in the order of the candidates. */
export function decisiveRows(
  { rows, shortfalls }: Pick<Judgement, 'rows' | 'shortfalls'>,
  letters: readonly string[],
): DecisiveRow[] {
  const isAsked = (id: string) => rows.some((row) => row.id === id && row.asked !== null);
  return [...DECISIVE, ASKED.find(isAsked) ?? RESERVE]
    .flatMap((id) => rows.find((row) => row.id === id) ?? [])
    .map((row) => ({
      row,
      sentence: sentenceOn(row, shortfalls, letters),
    }));
}

function sentenceOn(
  { cells }: VerdictRow,
  shortfalls: Judgement['shortfalls'],
  letters: readonly string[],
): string {
  const valued = cells.flatMap(({ value, text }, place) => (value === null ? [] : { value, text, place }));
  const able = valued.filter(({ place }) => at(shortfalls, place).length === 0);
  const pool = able.length > 0 ? able : valued;
  if (pool.length === 0) return 'None of the drives has this figure.';
  const min = Math.min(...pool.map(({ value }) => value));
  const best = pool.filter(({ value }) => value === min);
  const who = listed(best.map(({ place }) => at(letters, place)));
  const text = at(best, 0).text;
  const main =
    able.length === 0
      ? `Lowest: ${who}, ${text}; none of the drives does the job.`
      : able.length === 1
        ? `${who}, the only one that does the job: ${text}.`
        : `Lowest of those that do the job: ${who}, ${text}.`;
  const lower = valued.filter(({ value, place }) => value < min && at(shortfalls, place).length > 0);
  if (able.length === 0 || lower.length === 0) return main;
  const others = listed(lower.map((each) => at(letters, each.place)));
  return lower.length > 1
    ? `${main} ${others} are lower but do not do it.`
    : `${main} ${others} is lower but does not do it.`;
}
