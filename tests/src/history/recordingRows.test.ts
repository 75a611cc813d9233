import { expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT, CHANNEL_NAMES } from '../../../shared/core/channels.ts';
import { History } from '../../../src/history/history.ts';
import { recordingRows } from '../../../src/history/recordingRows.ts';

const PERIOD = 1 / 8000;

/** A run of `count` samples whose table stands at its sample number, in µm. */
function recorded(count: number): History {
  const history = new History([64, 65536]);
  const bins = new Float64Array(count * 2 * CHANNEL_COUNT);
  for (let k = 0; k < count; k++) {
    for (let end = 0; end < 2; end++) {
      const place = (channel: number) => k * 2 * CHANNEL_COUNT + 2 * channel + end;
      bins[place(C.time)] = k * PERIOD;
      bins[place(C.tablePosition)] = k * 1e-6;
    }
  }
  history.ingest({ run: 1, bins, count });
  return history;
}

it('a short span has a line for each sample, under the names of the channels, as it can be read back', () => {
  const rows = recordingRows(recorded(60), 10 * PERIOD, 50 * PERIOD);
  expect(rows[0]).toEqual(CHANNEL_NAMES);
  expect(rows).toHaveLength(41);
  const position = rows.slice(1).map((row) => Number(at(row, C.tablePosition)));
  // A bin touches its neighbour: to one sample.
  position.forEach((x, k) => {
    expect(Math.abs(x - (10 + k) * 1e-6)).toBeLessThanOrEqual(1.0001e-6);
  });
  expect(Number(at(at(rows, 1), 0))).toBeCloseTo(10 * PERIOD, 12);
});

it('a long span keeps the extremes of every stretch', () => {
  const rows = recordingRows(recorded(45_000), 0, 45_000 * PERIOD);
  const head = at(rows, 0);
  expect(head.slice(0, 3)).toEqual(['time', `${at(CHANNEL_NAMES, 1)} min`, `${at(CHANNEL_NAMES, 1)} max`]);
  expect(rows.length).toBeGreaterThan(10_000);
  expect(rows.length).toBeLessThanOrEqual(20_001);
  const last = at(rows, rows.length - 1);
  expect(Number(last[head.indexOf('tablePosition max')])).toBeCloseTo(44_999e-6, 9);
  expect(rows.flat().every((cell) => cell !== 'NaN' && cell !== 'undefined')).toBe(true);
});
