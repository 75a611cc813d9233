import { readFileSync } from 'node:fs';
import { expect } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { ranged } from '../../../shared/core/format.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { doJob, type Job, type JobResult } from '../../../workers/pretune/jobs.ts';
import type { JobWorker } from '../../../workers/pretune/pool.ts';
import { taskOf } from '../../../workers/pretune/task.ts';
import { tryOut } from '../../../workers/pretune/tryOut.ts';
import { pretuned } from './run.ts';

/*
 * Pretuned against the best of three textbook rules with three choices of filters, on every scene, at the same peak
 * sensitivity: a table that is committed, and made anew by `table.long.test.ts`.
 */

/** A careful tuning: 1.4 to 2 is usual (Åström, Murray, Feedback Systems, 2nd ed. 2021, ch. 10). */
const SENSITIVITY = 1.5;
const EQUAL = 0.02;

export const TABLE = new URL('table.md', import.meta.url);

export const HEAD = `# Pretuned against a careful textbook tuning

Every figure is from a simulated run at a peak sensitivity of ${SENSITIVITY}, standing and sliding, to within ${EQUAL * 100} %. The textbook is the best of: lead
ratios; symmetrical optimum with the speed filter at eight times the crossover; the same with a filter of one sample. Each has the current
loop by the magnitude optimum, all delays counted, feedforward of mass and viscous drag, and whichever filters let it be fastest: none, those of the scene,
or a notch on the resonance that the datasheet gives. With fewer trials than the page makes.
Written by \`WRITE_TABLE=1 npm run test:long -- tests/workers/pretune/table && npx biome check --write tests/workers/pretune\`.

Where both tunings are inside the window when the command ends, the window is halved, not below two encoder counts, until the textbook needs time;
where no window tells them apart, the RMS following error does. Scans do not settle: there the RMS following error at constant speed counts.

| scene | window | settling, textbook | settling, pretuned | RMS following error, textbook | pretuned | peak sensitivity | textbook rule |
| --- | --- | --- | --- | --- | --- | --- | --- |
`;

/** The cells of a row as they are printed. */
export interface Row {
  readonly scene: string;
  readonly window: string;
  readonly settlingTextbook: string;
  readonly settlingPretuned: string;
  readonly errorTextbook: string;
  readonly errorPretuned: string;
  readonly sensitivities: string;
  readonly rule: string;
}

export const rowText = (row: Row): string => `| ${Object.values(row).join(' | ')} |`;

/** The rows of the committed table by scene, in its order. */
export function committedRows(): Map<string, Row> {
  const lines = readFileSync(TABLE, 'utf8').split('\n');
  const rows = lines.filter((line) => line.startsWith('| ')).slice(2);
  return new Map(rows.map((line) => parsed(line)).map((row) => [row.scene, row]));
}

function parsed(line: string): Row {
  const cells = line.split('|').slice(1, -1);
  const [
    scene = '',
    window = '',
    settlingTextbook = '',
    settlingPretuned = '',
    errorTextbook = '',
    errorPretuned = '',
    sensitivities = '',
    rule = '',
  ] = cells.map((cell) => cell.trim());
  return {
    scene,
    window,
    settlingTextbook,
    settlingPretuned,
    errorTextbook,
    errorPretuned,
    sensitivities,
    rule,
  };
}

const SIZES: Readonly<Record<string, number>> = {
  s: 1,
  ms: 1e-3,
  µs: 1e-6,
  m: 1,
  mm: 1e-3,
  µm: 1e-6,
  nm: 1e-9,
};

/** A cell such as `21.3 ms` in SI; 0 at once, Infinity where it did not settle, NaN where the cell is empty. */
export function quantity(cell: string): number {
  if (cell === 'not settled') return Number.POSITIVE_INFINITY;
  if (cell === 'at once') return 0;
  const [number, unit = ''] = cell.replace('±', '').split(' ');
  return Number(number) * (SIZES[unit] ?? Number.NaN);
}

/** A fresh run of a scene: that its tuning is better than the textbook and proven, and its row. */
export async function freshRow(scene: Scene, workers: readonly JobWorker<Job, JobResult>[]): Promise<Row> {
  const goal = { kind: 'peak sensitivity', limit: SENSITIVITY } as const;
  const result = await pretuned(scene, goal, workers);
  const { best, textbook, robustness } = result;
  if (!textbook) throw new Error(`no textbook tuning of ${scene.title}`);
  expect(best.trip).toBeNull();
  for (const { peakSensitivity } of [best, textbook])
    expect(Math.abs(peakSensitivity / SENSITIVITY - 1)).toBeLessThan(EQUAL);

  const settled = (point: TuningPoint) => point.settlingTime ?? Number.POSITIVE_INFINITY;
  if (result.figure === 'following error' || settled(textbook) === 0) {
    expect(best.rmsError).toBeLessThan(0.9 * textbook.rmsError);
    if (result.figure === 'settling time') expect(settled(best)).toBe(0);
  } else {
    expect(settled(best)).toBeLessThan(0.9 * settled(textbook));
  }

  expect(robustness).toHaveLength(7);
  for (const { trip, peakSensitivity } of robustness) {
    expect(trip).toBeNull();
    // Half of the distance to −1 that the limit asks.
    expect(peakSensitivity).toBeLessThan(2 * SENSITIVITY * (1 + EQUAL));
  }
  return rowOf(String(scene.id), taskOf(scene).scene, result, { textbook, best });
}

/** What the best textbook rule gives in a fresh run. */
export function freshTextbook(scene: Scene): TuningPoint {
  const limit = { kind: 'peak sensitivity', limit: SENSITIVITY } as const;
  return present(doJob({ kind: 'textbook', task: taskOf(scene), limit }));
}

interface Pair {
  readonly textbook: TuningPoint;
  readonly best: TuningPoint;
}

function rowOf(name: string, scene: Scene, result: PretuneResult, pair: Pair): Row {
  const settles = result.figure === 'settling time';
  const time = ({ settlingTime }: TuningPoint) =>
    settlingTime === null ? 'not settled' : settlingTime === 0 ? 'at once' : ranged(settlingTime, 's');
  const { window, textbook, best } = settlingIn(scene, pair);
  return {
    scene: name,
    window: settles ? `±${ranged(window, 'm')}` : '',
    settlingTextbook: settles ? time(textbook) : '',
    settlingPretuned: settles ? time(best) : '',
    errorTextbook: ranged(pair.textbook.rmsError, 'm'),
    errorPretuned: ranged(pair.best.rmsError, 'm'),
    sensitivities: [pair.textbook, pair.best].map((each) => each.peakSensitivity.toFixed(3)).join(', '),
    rule: pair.textbook.label,
  };
}

/** Settling in the window of the scene, or in the first smaller one where the textbook needs time. */
function settlingIn(scene: Scene, pair: Pair): Pair & { window: number } {
  let window = scene.parameters.window;
  let found = { window, ...pair };
  while (found.textbook.settlingTime === 0 && found.best.settlingTime === 0) {
    window /= 2;
    if (window < 2 * scene.parameters.encoderResolution) break;
    const task = taskOf(scene, window);
    const again = ({ changes, origin, label }: TuningPoint) => tryOut(task, changes, origin, label);
    found = { window, textbook: again(pair.textbook), best: again(pair.best) };
  }
  return found;
}

/**
 * Cell by cell: text as printed, numbers within 1 % or one unit of the last digit that is printed, since a search may
 * take another turn on the last digits of another machine's arithmetic.
 */
export function expectSameRow(fresh: Row, committed: Row | undefined): void {
  expect(committed).toBeDefined();
  for (const [column, cell] of Object.entries(committed ?? {}) as [keyof Row, string][]) {
    const numbers = cell.match(NUMBER) ?? [];
    const found = fresh[column].match(NUMBER) ?? [];
    const place = `${fresh.scene}, ${column}: ${fresh[column]} now, ${cell} in the table`;
    expect(fresh[column].replace(NUMBER, '#'), place).toBe(cell.replace(NUMBER, '#'));
    for (const [k, number] of numbers.entries()) {
      const digit = 10 ** -(number.split('.')[1] ?? '').length;
      const difference = Math.abs(Number(found[k]) - Number(number));
      expect(difference, place).toBeLessThanOrEqual(Math.max(1.001 * digit, 0.01 * Math.abs(Number(number))));
    }
  }
}

const NUMBER = /\d+(?:\.\d+)?/g;
