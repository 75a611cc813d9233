import { readFileSync, writeFileSync } from 'node:fs';
import { env } from 'node:process';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { ranged } from '../../../shared/core/format.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { taskOf } from '../../../workers/pretune/task.ts';
import { tryOut } from '../../../workers/pretune/tryOut.ts';
import { pretuned } from './run.ts';
import { jobThreads } from './threads.ts';

/*
 * Pretuned against the best of three textbook rules with three choices of filters, on every scene, at the same peak sensitivity. The table is
 * written by `WRITE_TABLE=1 npx vitest run tests/workers/pretune/table.test.ts && npx biome check --write tests/workers/pretune`.
 */

/** A careful tuning: 1.4 to 2 is usual (Åström, Murray, Feedback Systems, 2nd ed. 2021, ch. 10). */
const SENSITIVITY = 1.5;
const EQUAL = 0.02;

const TABLE = new URL('table.md', import.meta.url);
const HEAD = `# Pretuned against a careful textbook tuning

Every figure is from a simulated run at a peak sensitivity of ${SENSITIVITY}, standing and sliding, to within ${EQUAL * 100} %. The textbook is the best of: lead
ratios; symmetrical optimum with the speed filter at eight times the crossover; the same with a filter of one sample. Each has the current
loop by the magnitude optimum, all delays counted, feedforward of mass and viscous drag, and whichever filters let it be fastest: none, those of the scene,
or a notch on the resonance that the datasheet gives. With fewer trials than the page makes.
Written by \`WRITE_TABLE=1 npx vitest run tests/workers/pretune/table.test.ts && npx biome check --write tests/workers/pretune\`.

Where both tunings are inside the window when the command ends, the window is halved, not below two encoder counts, until the textbook needs time;
where no window tells them apart, the RMS following error does. Scans do not settle: there the RMS following error at constant speed counts.

| scene | window | settling, textbook | settling, pretuned | RMS following error, textbook | pretuned | peak sensitivity | textbook rule |
| --- | --- | --- | --- | --- | --- | --- | --- |
`;

/** Settling in the window of the scene, or in the first smaller one where the textbook needs time. */
function settlingIn(
  scene: Scene,
  { textbook, best }: Pair,
): { window: number; textbook: TuningPoint; best: TuningPoint } {
  let window = scene.parameters.window;
  let found = { window, textbook, best };
  while (found.textbook.settlingTime === 0 && found.best.settlingTime === 0) {
    window /= 2;
    if (window < 2 * scene.parameters.encoderResolution) break;
    const task = taskOf(scene, window);
    const [a, b] = [textbook, best].map(({ changes, origin, label }) => tryOut(task, changes, origin, label));
    found = { window, textbook: a!, best: b! };
  }
  return found;
}

interface Pair {
  readonly textbook: TuningPoint;
  readonly best: TuningPoint;
}

function row(name: string, scene: Scene, result: PretuneResult, pair: Pair): string {
  const time = ({ settlingTime }: TuningPoint) =>
    settlingTime === null ? 'not settled' : ranged(settlingTime, 's');
  const { window, textbook, best } = settlingIn(scene, pair);
  const settling =
    result.figure === 'settling time'
      ? [`±${ranged(window, 'm')}`, time(textbook), time(best)]
      : ['', '', ''];
  const errors = [pair.textbook, pair.best].map(({ rmsError }) => ranged(rmsError, 'm'));
  const sensitivities = `${pair.textbook.peakSensitivity.toFixed(3)}, ${pair.best.peakSensitivity.toFixed(3)}`;
  return `| ${[name, ...settling, ...errors, sensitivities, pair.textbook.label].join(' | ')} |`;
}

/** The columns of a row: settling and RMS error of textbook and pretuned, SI; Infinity where it did not settle. */
function figuresOf(line: string): { settling: number[]; errors: number[] } {
  const [, , a, b, c, d] = cellsOf(line);
  return { settling: [a!, b!].filter((cell) => cell !== '').map(quantity), errors: [c!, d!].map(quantity) };
}

function cellsOf(line: string): string[] {
  return line
    .split('|')
    .slice(1, -1)
    .map((cell) => cell.trim());
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

function quantity(text: string): number {
  const [number, unit] = text.split(' ');
  return text === 'not settled' ? Number.POSITIVE_INFINITY : Number(number) * SIZES[unit!]!;
}

describe('pretuned against a textbook', () => {
  const rows = new Map<string, string>();
  let threads: Awaited<ReturnType<typeof jobThreads>>;

  beforeAll(async () => {
    threads = await jobThreads(2);
  });

  afterAll(() => threads.end());

  it.each(SCENES)('$id: better at the same peak sensitivity, and proven', async (scene) => {
    const name = String(scene.id);
    const goal = { kind: 'peak sensitivity', limit: SENSITIVITY } as const;
    const result = await pretuned(scene, goal, threads.workers);
    const { best, textbook, robustness } = result;
    expect(best.trip).toBeNull();
    expect(textbook).not.toBeNull();
    for (const { peakSensitivity } of [best, textbook!])
      expect(Math.abs(peakSensitivity / SENSITIVITY - 1)).toBeLessThan(EQUAL);

    const settled = (point: TuningPoint) => point.settlingTime ?? Number.POSITIVE_INFINITY;
    if (result.figure === 'following error' || settled(textbook!) === 0) {
      expect(best.rmsError).toBeLessThan(0.9 * textbook!.rmsError);
      if (result.figure === 'settling time') expect(settled(best)).toBe(0);
    } else {
      expect(settled(best)).toBeLessThan(0.9 * settled(textbook!));
    }

    expect(robustness).toHaveLength(7);
    for (const { trip, peakSensitivity } of robustness) {
      expect(trip).toBeNull();
      // Half of the distance to −1 that the limit asks.
      expect(peakSensitivity).toBeLessThan(2 * SENSITIVITY * (1 + EQUAL));
    }
    rows.set(name, row(name, taskOf(scene).scene, result, { textbook: textbook!, best }));
  });

  it('is as the table says', () => {
    if (env.WRITE_TABLE) writeFileSync(TABLE, `${HEAD}${[...rows.values()].join('\n')}\n`);
    const recordedRows = readFileSync(TABLE, 'utf8')
      .split('\n')
      .filter((line) => line.startsWith('| '))
      .slice(2);
    expect(recordedRows.map((line) => cellsOf(line)[0])).toEqual(SCENES.map(({ id }) => id));
    for (const [name, now] of rows) {
      const line = recordedRows.find((each) => cellsOf(each)[0] === name);
      const [recorded, found] = [figuresOf(line!), figuresOf(now)];
      for (const [textbook, best] of [recorded.settling, recorded.errors])
        if (textbook !== undefined) expect(best!).toBeLessThanOrEqual(textbook);
      // Rules give what they give; what search finds may depend on the last digits of a machine's arithmetic.
      const textbookOf = ({ settling, errors }: typeof found) => [...settling.slice(0, 1), errors[0]!];
      for (const [k, before] of textbookOf(recorded).entries())
        if (Number.isFinite(before) && before > 0)
          expect(Math.abs(textbookOf(found)[k]! / before - 1)).toBeLessThan(0.1);
    }
  });
});
