import { at, valueAt } from '../../shared/core/at.ts';
import { CHANNEL_NAMES } from '../../shared/core/channels.ts';
import type { History } from './history.ts';

/** Lines of a recording at most: what a spreadsheet still opens at once. */
const MAX_LINES = 20_000;

/**
 * The recording from `from` to `to` (s) as lines of a table, SI. While every sample of the position loop has a line, a channel has
 * one column, under its name; over longer spans each line is a stretch, and a channel its minimum and its maximum there.
 */
export function recordingRows(history: History, from: number, to: number): string[][] {
  const samples = Math.round((to - from) / history.spacing);
  const count = Math.max(1, Math.min(samples, MAX_LINES));
  const single = count === samples;
  const columns = CHANNEL_NAMES.filter((name) => name !== 'time').map((name) => {
    const lows = new Float64Array(count);
    const highs = new Float64Array(count);
    history.columns(name, from, to, count, lows, highs);
    return { name, lows, highs };
  });
  const head = single
    ? CHANNEL_NAMES.slice()
    : ['time', ...columns.flatMap(({ name }) => [`${name} min`, `${name} max`])];
  const step = (to - from) / count;
  const rows = Array.from({ length: count }, (_, k) => {
    const values = columns.flatMap(({ lows, highs }) =>
      single ? [(valueAt(lows, k) + valueAt(highs, k)) / 2] : [valueAt(lows, k), valueAt(highs, k)],
    );
    return [from + k * step, ...values];
  });
  const recorded = rows.filter((row) => Number.isFinite(at(row, 1)));
  return [head, ...recorded.map((row) => row.map(String))];
}
