import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { TimeView } from '../../../src/charts/timeView.ts';
import { History } from '../../../src/history/history.ts';
import { ColumnBuffer } from '../../../src/plot/strip/columnBuffer.ts';
import { frame, PERIOD, random, type Source } from '../history/frames.ts';

const next = random(5);
const values = Array.from({ length: 30_000 }, () => Math.fround(next()));
const source: Source = (i) => ({ followingError: [at(values, i) - 1, at(values, i)] });
const COLUMNS = 300;

describe('columns of a moving window', () => {
  it('are those of a fresh reading, however the window has moved', () => {
    const history = new History();
    const view = new TimeView(0.3);
    const kept = new ColumnBuffer('followingError');
    const move = random(6);
    for (let i = 0; i < 20_000; ) {
      const size = 1 + Math.floor(400 * move());
      history.ingest(frame(i, size, source));
      i += size;
      if (move() < 0.05) view.pan(-0.3);
      if (move() < 0.1) view.followLive();
      view.update(history.oldestTime, history.latestTime, COLUMNS);
      kept.read(history, view, COLUMNS);
      const fresh = new ColumnBuffer('followingError');
      fresh.read(history, view, COLUMNS);
      expect(kept.firstColumn).toBe(fresh.firstColumn);
      expect(kept.lows).toEqual(fresh.lows);
      expect(kept.highs).toEqual(fresh.highs);
      expect([kept.low(), kept.high()]).toEqual([
        Math.min(...known(kept.lows)),
        Math.max(...known(kept.highs)),
      ]);
    }
  });

  it('forget another run, another zoom and another width', () => {
    const history = new History();
    const buffer = new ColumnBuffer('followingError');
    const read = (span: number, count: number) => {
      buffer.read(history, { from: 0, to: span }, count);
      return known(buffer.highs).length;
    };
    expect(read(1, 100)).toBe(0);
    expect(buffer.last()).toBe(-1);
    history.ingest(frame(0, 8000, source, 1));
    expect(read(1, 100)).toBe(100);
    expect(read(2, 100)).toBe(50);
    expect(read(2, 200)).toBe(100);
    expect(buffer.last()).toBe(99);
    history.ingest(frame(0, 80, source, 2));
    expect(read(2, 200)).toBe(1);
    expect(80 * PERIOD).toBe(0.01);
  });
});

function known(values: Float64Array): number[] {
  return [...values].filter((value) => !Number.isNaN(value));
}
