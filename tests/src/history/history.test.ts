import { describe, expect, it } from 'vitest';
import { at, valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX } from '../../../shared/core/channels.ts';
import { History } from '../../../src/history/history.ts';
import { frame, PERIOD, random, type Source } from './frames.ts';

const SMALL = [64, 64, 32];

/** Feeds `count` records in frames of uneven length, as display refreshes cut them. */
function feed(history: History, count: number, source: Source, first = 0): void {
  const length = random(7);
  for (let i = first; i < first + count; ) {
    const size = Math.min(1 + Math.floor(200 * length()), first + count - i);
    history.ingest(frame(i, size, source));
    i += size;
  }
}

function columns(
  history: History,
  channel: 'followingError' | 'setpoint',
  from: number,
  to: number,
  count: number,
) {
  const lows = new Float64Array(count);
  const highs = new Float64Array(count);
  history.columns(channel, from, to, count, lows, highs);
  return { lows, highs };
}

/** Extremes of the records that touch [from, to), by looking at every one. */
function bruteForce(
  values: readonly (readonly [number, number])[],
  from: number,
  to: number,
): [number, number] {
  let low = Number.NaN;
  let high = Number.NaN;
  const first = Math.max(0, Math.floor(from / PERIOD + 1e-9));
  const end = Math.min(values.length, Math.ceil(to / PERIOD - 1e-9));
  for (const [a, b] of values.slice(first, end)) {
    low = a < low || Number.isNaN(low) ? a : low;
    high = b > high || Number.isNaN(high) ? b : high;
  }
  return [low, high];
}

const noise = (count: number, seed: number) => {
  const next = random(seed);
  return Array.from({ length: count }, (): [number, number] => {
    const middle = 1e-6 * (next() - 0.5);
    const half = 1e-7 * next();
    return [Math.fround(middle - half), Math.fround(middle + half)];
  });
};

describe('history', () => {
  it('starts empty and says so', () => {
    const history = new History(SMALL);
    expect(history.latestTime).toBeNaN();
    expect(history.oldestTime).toBeNaN();
    expect(columns(history, 'setpoint', 0, 1, 3).lows).toEqual(new Float64Array(3).fill(Number.NaN));
    expect(history.meanSquare('motorForce', 0, 1)).toBeNaN();
  });

  it('refuses rings that cannot work', () => {
    expect(() => new History([64, 48])).toThrow(/capacity is 48.*power of two/);
    expect(() => new History([8])).toThrow(/capacity is 8.*16 or more/);
  });

  it('shows single samples exactly as they came while they are kept', () => {
    const values = noise(50, 1);
    const history = new History(SMALL);
    feed(history, 50, (i) => ({ followingError: at(values, i) }));
    const { lows, highs } = columns(history, 'followingError', 0, 50 * PERIOD, 50);
    expect([...lows]).toEqual(values.map(([low]) => low));
    expect([...highs]).toEqual(values.map(([, high]) => high));
  });

  it('keeps every digit of a position: a nanometre at 0.3 m, two hours into a run', () => {
    const first = 2 * 3600 * 8000;
    const history = new History();
    feed(history, 40, (i) => ({ setpoint: [0.3 + i * 1e-9, 0.3 + i * 1e-9] }), first);
    const { lows } = columns(history, 'setpoint', first * PERIOD, (first + 40) * PERIOD, 40);
    lows.forEach((low, i) => {
      expect(low - 0.3).toBeCloseTo((first + i) * 1e-9, 13);
    });
  });

  it('never loses a spike of one sample, at any zoom, however old', () => {
    const spike = 30_123;
    const history = new History([1024, 1024, 1024]);
    feed(history, 200_000, (i) => ({ followingError: i === spike ? [-5e-3, 7e-3] : [-1e-9, 1e-9] }));
    for (const count of [1, 3, 40, 700, 1900])
      for (const span of [25, 20, 8, 4]) {
        const { lows, highs } = columns(
          history,
          'followingError',
          spike * PERIOD - span / 7,
          spike * PERIOD + span,
          count,
        );
        expect(Math.min(...lows.filter((v) => !Number.isNaN(v)))).toBe(Math.fround(-5e-3));
        expect(Math.max(...highs.filter((v) => !Number.isNaN(v)))).toBe(Math.fround(7e-3));
      }
    const out = new Float64Array(2);
    history.extremes('followingError', 0, 25, out);
    expect([...out]).toEqual([Math.fround(-5e-3), Math.fround(7e-3)]);
  });

  it('agrees with brute force at every zoom while nothing is overwritten', () => {
    const total = 20_000;
    const values = noise(total, 2);
    const history = new History([32768, 2048, 128]);
    feed(history, total, (i) => ({ followingError: at(values, i) }));
    const next = random(3);
    for (let trial = 0; trial < 40; trial++) {
      const span = total * PERIOD * 10 ** (-3 * next());
      const from = (total * PERIOD - span) * next();
      const count = 1 + Math.floor(60 * next());
      const { lows, highs } = columns(history, 'followingError', from, from + span, count);
      const width = span / count;
      // A bin may be as long as a column, so a column may also show what lies up to one column beside it.
      for (let c = 0; c < count; c++) {
        const [low, high] = bruteForce(values, from + c * width, from + (c + 1) * width);
        const [lowest, highest] = bruteForce(values, from + (c - 1) * width, from + (c + 2) * width);
        expect(valueAt(lows, c)).toBeLessThanOrEqual(low);
        expect(valueAt(lows, c)).toBeGreaterThanOrEqual(lowest);
        expect(valueAt(highs, c)).toBeGreaterThanOrEqual(high);
        expect(valueAt(highs, c)).toBeLessThanOrEqual(highest);
      }
    }
  });

  it('covers old and new without a hole once the fine rings have wrapped', () => {
    const total = 5_000;
    const history = new History(SMALL);
    feed(history, total, (i) => ({ setpoint: [i, i] }));
    expect(history.oldestTime).toBeCloseTo(0, 12);
    expect(history.latestTime).toBeCloseTo(total * PERIOD - PERIOD / 2, 9);
    // 32 columns of 156 samples; the coarsest bins hold 256, so each column shows at most one such bin to either side.
    const { lows, highs } = columns(history, 'setpoint', 0, total * PERIOD, 32);
    const perColumn = total / 32;
    for (let c = 0; c < 32; c++) {
      expect(valueAt(lows, c)).toBeLessThanOrEqual(Math.ceil(c * perColumn));
      expect(valueAt(lows, c)).toBeGreaterThanOrEqual(c * perColumn - 256);
      expect(valueAt(highs, c)).toBeGreaterThanOrEqual(Math.floor((c + 1) * perColumn) - 1);
      expect(valueAt(highs, c)).toBeLessThanOrEqual((c + 1) * perColumn + 256);
    }
    // The newest samples are there singly, the oldest only as coarse bins.
    const newest = columns(history, 'setpoint', (total - 10) * PERIOD, total * PERIOD, 10);
    expect([...newest.lows]).toEqual(Array.from({ length: 10 }, (_, i) => total - 10 + i));
    const oldest = columns(history, 'setpoint', 0, 10 * PERIOD, 10);
    expect([oldest.lows[5], oldest.highs[5]]).toEqual([0, 255]);
  });

  it('forgets the oldest when even the coarsest ring has wrapped', () => {
    const history = new History(SMALL);
    const total = 12_000;
    feed(history, total, (i) => ({ setpoint: [i, i] }));
    const kept = 32 * 256;
    expect(history.oldestTime).toBeGreaterThan((total - kept - 2 * 256) * PERIOD);
    expect(history.oldestTime).toBeLessThanOrEqual((total - kept + 256) * PERIOD);
    expect(columns(history, 'setpoint', 0, 1e-3, 1).lows[0]).toBeNaN();
  });

  it('leaves a gap where samples are missing, at every zoom', () => {
    const history = new History([1024, 256, 64]);
    const source: Source = (i) => ({ setpoint: [i, i] });
    feed(history, 1000, source);
    feed(history, 9000, source, 5000);
    const gapStart = 1000 * PERIOD;
    const gapEnd = 5000 * PERIOD;
    for (const count of [70, 350, 1400]) {
      const { lows } = columns(history, 'setpoint', 0, 14_000 * PERIOD, count);
      const width = (14_000 * PERIOD) / count;
      lows.forEach((low, c) => {
        const inGap = c * width >= gapStart - 1e-9 && (c + 1) * width <= gapEnd + 1e-9;
        expect(Number.isNaN(low)).toBe(inGap);
      });
    }
  });

  it('starts afresh with another run, and a run may end anywhere', () => {
    const history = new History(SMALL);
    history.ingest(frame(0, 300, () => ({ setpoint: [1, 1] }), 1));
    const before = history.version;
    history.ingest(frame(0, 3, () => ({ setpoint: [2, 2] }), 2));
    expect(history.version).not.toBe(before);
    expect(history.latestTime).toBeCloseTo(2.5 * PERIOD, 12);
    const { lows, highs } = columns(history, 'setpoint', 0, 300 * PERIOD, 300);
    expect([...highs.subarray(0, 4)]).toEqual([2, 2, 2, Number.NaN]);
    expect(Math.max(...lows.filter((v) => !Number.isNaN(v)))).toBe(2);
    history.ingest(frame(0, 0, () => ({}), 3));
    expect(history.latestTime).toBeNaN();
  });

  it('takes time that runs backwards for another run', () => {
    const history = new History(SMALL);
    history.ingest(frame(1000, 300, () => ({ setpoint: [1, 1] })));
    const { epoch } = history;
    history.ingest(frame(0, 20, () => ({ setpoint: [2, 2] })));
    expect(history.epoch).not.toBe(epoch);
    expect(history.oldestTime).toBe(0);
    expect(history.latestTime).toBeCloseTo(19.5 * PERIOD, 12);
    expect(columns(history, 'setpoint', 0, 20 * PERIOD, 2).highs).toEqual(new Float64Array([2, 2]));
  });

  it('takes the mean square of a ramp exactly and of a sine to its known half', () => {
    const history = new History();
    feed(history, 1000, (i) => ({ motorForce: [i / 1000, (i + 1) / 1000] }));
    // ∫x² over 0..1 is 1/3; single precision bounds the agreement.
    expect(history.meanSquare('motorForce', 0, 1000 * PERIOD)).toBeCloseTo(1 / 3, 6);
    const wave = (i: number) => 300 * Math.sin((2 * Math.PI * i) / 400);
    history.ingest(
      frame(
        0,
        8000,
        (i) => ({ motorForce: [Math.min(wave(i), wave(i + 1)), Math.max(wave(i), wave(i + 1))] }),
        2,
      ),
    );
    expect(Math.sqrt(history.meanSquare('motorForce', 0, 1))).toBeCloseTo(300 / Math.SQRT2, 1);
  });

  it('stays below 60 MB', () => {
    expect(new History().byteLength).toBeGreaterThan(1e6);
    expect(new History().byteLength).toBeLessThan(60e6);
  });
});

describe('a moment of the past', () => {
  /** A ramp in steps of a record: record i runs from i to i + 1. */
  const ramp: Source = (i) => ({ followingError: [i, i + 1], setpoint: [i, i] });
  const OUT = new Float64Array(CHANNEL_COUNT);
  const { followingError, setpoint, time } = CHANNEL_INDEX;

  it('is read from the sample that holds it', () => {
    const history = new History(SMALL);
    feed(history, 50, ramp);
    expect(history.valuesAt(20.5 * PERIOD, OUT)).toBe(true);
    expect(OUT[followingError]).toBe(20.5);
    expect(OUT[setpoint]).toBe(20);
    expect(Math.abs(valueAt(OUT, time) - 20.5 * PERIOD)).toBeLessThan(PERIOD);
  });

  it('is read from coarser bins where single samples are no longer kept', () => {
    const history = new History(SMALL);
    feed(history, 600, ramp);
    // Record 100 stands in the bin of 16 records from 96 to 111, which runs from 96 to 112.
    history.valuesAt(100.5 * PERIOD, OUT);
    expect(OUT[followingError]).toBe(104);
    history.valuesAt(590.5 * PERIOD, OUT);
    expect(OUT[followingError]).toBe(590.5);
  });

  it('is the nearest one that is kept, or none', () => {
    const history = new History(SMALL);
    expect(history.valuesAt(1, OUT)).toBe(false);
    feed(history, 50, ramp);
    history.valuesAt(99, OUT);
    expect(OUT[setpoint]).toBe(49);
    history.valuesAt(-1, OUT);
    expect(OUT[setpoint]).toBe(0);
  });
});
