import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, describe, expect, it, vi } from 'vitest';
import { at, present } from '../../../../shared/core/at.ts';
import { problemText } from '../../../../shared/core/problem.ts';
import { AS_WRITTEN } from '../../../../shared/core/sentence.ts';
import type { Trace } from '../../../../shared/protocol/trace.ts';
import { mapTrace, suggestMapping, type TraceMapping } from '../../../../src/tuning/trace/traceFile.ts';
import { readTraceTable, type TraceTable } from '../../../../src/tuning/trace/traceTable.ts';
import { main } from '../../../../workers/entry/commandLine.ts';

/** A count of 50 nm, and a drive of 6 A peak. */
const SCALES = { count: 5e-8, ratedCurrent: 6 };

function tableOf(text: string): TraceTable {
  const result = readTraceTable(text);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result;
}

function mapped(table: TraceTable, mapping = suggestMapping(table)): Trace {
  const result = mapTrace(table, mapping, SCALES);
  if ('problems' in result) throw new Error(JSON.stringify(result.problems));
  return result;
}

/** Rows `time, position, current` at the times, of a motion x(t). */
function recording(times: readonly number[], x = (t: number) => t, digits = 12): string {
  const rows = times.map((t) => `${t.toFixed(digits)};${x(t)};${2 * t}`);
  return ['time [s];position [mm];current [A]', ...rows].join('\n');
}

const even = (count: number, period: number) => Array.from({ length: count }, (_, k) => k * period);

const MAPPING: TraceMapping = {
  time: { column: 0, unit: 's' },
  position: { column: 1, unit: 'mm' },
  current: { column: 2, unit: 'A' },
};

describe('a trace comes out in SI', () => {
  it('by its column units, with a current in ampere rms as an amplitude', () => {
    const rows = even(60, 0.5).map((t) => `${t};${t};${t};${t}`);
    const trace = mapped(
      tableOf(['time [ms];position [µm];iq [Arms];motor position [nm]', ...rows].join('\n')),
    );
    expect(trace.period).toBeCloseTo(5e-4, 15);
    expect(trace.position[2]).toBeCloseTo(1e-6, 18);
    expect(trace.motorPosition![2]).toBeCloseTo(1e-9, 21);
    expect(trace.current![2]).toBeCloseTo(Math.SQRT2, 14);
    expect([trace.setpoint, trace.tablePosition, trace.currentCommand]).toEqual([null, null, null]);
  });

  it('from counts, milliamperes and per cent of the rated current', () => {
    const rows = even(60, 0.5).map((t) => `${t};${Math.round(1000 * t)};${1000 * t};${10 * t}`);
    const trace = mapped(
      tableOf(['Zeit [ms];Lage Ist [Inkr];Iststrom [mA eff];Sollstrom [%]', ...rows].join('\n')),
    );
    expect(trace.position[2]).toBeCloseTo(1000 * 5e-8, 15);
    expect(trace.current![2]).toBeCloseTo(Math.SQRT2, 12);
    expect(trace.currentCommand![2]).toBeCloseTo(0.1 * 6, 12);
  });

  it('by a sample rate in place of a column of times', () => {
    const trace = mapped(tableOf(recording(even(60, 1))), { ...MAPPING, time: { rate: 4000 } });
    expect(trace.period).toBe(1 / 4000);
    expect(trace.resampled).toBe('as recorded');
  });
});

describe('the grid of time', () => {
  it('is that of even rows, to the last digit of their values', () => {
    const trace = mapped(tableOf(recording(even(1000, 0.000125), Math.sin)));
    expect(trace.resampled).toBe('as recorded');
    expect(trace.period).toBeCloseTo(0.000125, 12);
    expect([...trace.position]).toEqual(even(1000, 0.000125).map((t) => Math.sin(t) * 1e-3));
  });

  it('takes rows as even whose times are only rounded', () => {
    const trace = mapped(tableOf(recording(even(1000, 0.000125), Math.sin, 4)));
    expect(trace.resampled).toBe('time rounded');
    expect(trace.period).toBeCloseTo(0.000125, 7);
    expect(trace.position).toHaveLength(1000);
    expect(trace.position[501]).toBe(Math.sin(501 * 0.000125) * 1e-3);
  });

  it('lies through uneven rows by a cubic: exact for one, of fourth order for a sine', () => {
    const jitter = (count: number, period: number) =>
      even(count, period).map(
        (t, k) => t + 0.3 * period * Math.sin(7 * k) * (k > 0 && k < count - 1 ? 1 : 0),
      );
    const cubic = (t: number) => 1 + t - 2 * t * t + 3 * t ** 3;
    const exact = mapped(tableOf(recording(jitter(200, 0.01), cubic)));
    expect(exact.resampled).toBe('interpolated');
    exact.position.forEach((x, k) => {
      expect(x * 1e3).toBeCloseTo(cubic(k * exact.period), 9);
    });

    const worst = (count: number) => {
      const { position, period } = mapped(
        tableOf(recording(jitter(count, 2 / count), (t) => Math.sin(10 * t), 15)),
      );
      return position.reduce((max, x, k) => Math.max(max, Math.abs(x * 1e3 - Math.sin(10 * k * period))), 0);
    };
    // Halving the step divides the error of a cubic by 2⁴ (e.g. Quarteroni, Sacco, Saleri, Numerical Mathematics, 8.1); the jitter is not halved evenly.
    const order = Math.log2(worst(400) / worst(800));
    expect(order).toBeGreaterThan(3.5);
    expect(order).toBeLessThan(4.5);
  });

  it('reports gaps, down to a single row lost, and keeps them open', () => {
    const times = even(300, 0.001).filter((_, k) => (k < 100 || k > 130) && k !== 200);
    const trace = mapped(tableOf(recording(times)));
    expect(trace.gaps).toEqual([
      { from: 0.099, to: 0.131 },
      { from: 0.199, to: 0.201 },
    ]);
    expect(trace.position).toHaveLength(300);
    expect(Number.isNaN(at(trace.position, 115))).toBe(true);
    expect(trace.position[131]).toBeCloseTo(0.131e-3, 12);
  });
});

describe('a trace is refused', () => {
  const rows = even(60, 0.001);
  const swapped = (line: number, text: string) =>
    recording(rows)
      .split('\n')
      .with(line - 1, text)
      .join('\n');

  it.each<[string, string, TraceMapping, RegExp]>([
    [
      'without a position',
      recording(rows),
      { ...MAPPING, position: undefined } as unknown as TraceMapping,
      /^position: State which column/,
    ],
    [
      'without a time',
      recording(rows),
      { ...MAPPING, time: undefined } as unknown as TraceMapping,
      /^time: State which column holds the time/,
    ],
    [
      'without a current',
      recording(rows),
      { ...MAPPING, current: undefined } as unknown as TraceMapping,
      /^current: State which column/,
    ],
    [
      'with a column it has not',
      recording(rows),
      { ...MAPPING, current: { column: 7, unit: 'A' } },
      /^Force current: there is no column 7. Give one of 0 to 2/,
    ],
    [
      'with a unit of something else',
      recording(rows),
      { ...MAPPING, position: { column: 1, unit: 'A' } },
      /^Position at the encoder: "A" is not a unit for it. Give one of mm, m, µm, nm/,
    ],
    [
      'with a word for a number',
      swapped(12, '0.010;off;1'),
      MAPPING,
      /^line 12, position \[mm\]: "off" is not a number/,
    ],
    [
      'with time that stands',
      swapped(12, '0.009;1;1'),
      MAPPING,
      /^line 12, time \[s\]: the time 0.009 is not later than 0.009 in the row before/,
    ],
    [
      'with time that runs back',
      swapped(12, '0.001;1;1'),
      MAPPING,
      /^line 12, time \[s\]: the time 0.001 is not later/,
    ],
    ['with a time missing', swapped(12, ';1;1'), MAPPING, /^line 12, time \[s\]: the time is missing/],
    ['with too few samples', recording(even(20, 0.001)), MAPPING, /has 20 samples. Give at least 50/],
    [
      'sampled too slowly to be one',
      recording(even(60, 1)),
      MAPPING,
      /1.000 samples per second. Recordings of 10 to 1000000 per second/,
    ],
    [
      'at a rate that is none',
      recording(rows),
      { ...MAPPING, time: { rate: 0 } },
      /0 Hz is not a sample rate. Enter 10 to 1000000 Hz/,
    ],
    ['with a gap of hours', swapped(61, '99999;1;1'), MAPPING, /spans 1.000e\+5 s with 1 gaps. Cut it/],
  ])('%s', (_case, text, mapping, expected) => {
    const result = mapTrace(tableOf(text), mapping, SCALES);
    expect('problems' in result ? problemText(at(result.problems, 0), AS_WRITTEN) : '').toMatch(expected);
  });
});

describe('the export of the command line', () => {
  const folder = mkdtempSync(join(tmpdir(), 'trace-'));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('is recognised by itself and comes back unrounded', async () => {
    const log = vi.spyOn(console, 'log').mockImplementation(() => {});
    const path = join(folder, 'run.csv');
    expect(await main(['scenes/mould-shuttle.json', '--seconds', '0.1', '--csv', path])).toBe(0);
    log.mockRestore();
    const trace = mapped(tableOf(readFileSync(path, 'utf8')));
    expect(trace.period).toBeCloseTo(1 / 8000, 12);
    expect(trace.resampled).toBe('as recorded');
    expect(trace.position).toHaveLength(800);
    expect(trace.setpoint![0]).toBe(-0.125);
    // The table lags the motor by its inertia over the link, well below a micrometre and a half.
    const lag = present(trace.motorPosition).map((x, k) => Math.abs(x - at(present(trace.tablePosition), k)));
    expect(Math.max(...lag)).toBeGreaterThan(1e-8);
    expect(Math.max(...lag)).toBeLessThan(1.5e-6);
  });
});
