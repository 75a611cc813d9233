import { describe, expect, it } from 'vitest';
import { MAX_SPAN, MIN_SPAN, TimeView } from '../../../src/charts/timeView.ts';
import { TimeAxis } from '../../../src/plot/strip/timeAxis.ts';

const COLUMNS = 500;

function view(latest = 10, span = 2): TimeView {
  const made = new TimeView(span);
  made.update(0, latest, COLUMNS);
  return made;
}

describe('time window', () => {
  it('fills up from the left, then follows the newest sample in whole columns', () => {
    const v = view(0.5);
    expect([v.from, v.to]).toEqual([0, 2]);
    expect(v.newest).toBeCloseTo(0.25, 12);
    v.update(0, 7.12345, COLUMNS);
    const column = 2 / COLUMNS;
    expect(v.to).toBeGreaterThanOrEqual(7.12345);
    expect(v.to).toBeLessThan(7.12345 + column);
    expect(v.from / column).toBeCloseTo(Math.round(v.from / column), 6);
  });

  it('zooms about the pointer when held, about the newest edge when live', () => {
    const v = view();
    v.zoom(0.5, 0.25);
    v.update(0, 10, COLUMNS);
    expect(v.live).toBe(true);
    expect([v.from, v.to]).toEqual([9, 10]);
    v.pan(-3);
    v.update(0, 10, COLUMNS);
    const before = v.timeAt(0.25);
    v.zoom(0.5, 0.25);
    v.update(0, 12, COLUMNS);
    expect(v.live).toBe(false);
    expect(v.timeAt(0.25)).toBeCloseTo(before, 2);
    expect(v.to - v.from).toBeCloseTo(0.5, 12);
  });

  it('shows what was selected, whichever way it was dragged', () => {
    for (const [a, b] of [
      [0.25, 0.75],
      [0.75, 0.25],
    ] as const) {
      const v = view();
      v.select(a, b);
      v.update(0, 11, COLUMNS);
      expect(v.from).toBeCloseTo(8.5, 2);
      expect(v.to).toBeCloseTo(9.5, 2);
    }
  });

  it('stays while held, and is live again when panned to the newest sample', () => {
    const v = view();
    v.pan(-0.5);
    v.update(0, 20, COLUMNS);
    expect(v.to).toBeCloseTo(9, 9);
    v.pan(0.5);
    v.update(0, 20, COLUMNS);
    expect(v.live).toBe(false);
    v.pan(10);
    v.update(0, 20, COLUMNS);
    expect(v.live).toBe(true);
    expect(v.to).toBeCloseTo(20, 9);
  });

  it('does not leave what was recorded', () => {
    const v = view();
    v.pan(-100);
    v.update(0, 10, COLUMNS);
    expect(v.from).toBeCloseTo(0, 9);
    const young = view(0.5);
    young.pan(-1);
    young.update(0, 0.5, COLUMNS);
    expect(young.timeAt(0)).toBeLessThan(0.5);
    expect(young.timeAt(1)).toBeGreaterThan(0);
  });

  it('keeps the length of the window within bounds', () => {
    const v = view();
    for (let i = 0; i < 100; i++) v.zoom(0.5, 0.5);
    v.update(0, 10, COLUMNS);
    expect(v.to - v.from).toBeCloseTo(MIN_SPAN, 9);
    v.setSpan(1e9);
    v.update(0, 10, COLUMNS);
    expect(v.to - v.from).toBeCloseTo(MAX_SPAN, 6);
  });

  it('frozen, stands still and can still be zoomed; thawed, goes on', () => {
    const v = view();
    v.freeze(true);
    v.update(0, 15, COLUMNS);
    expect(v.to).toBeCloseTo(10, 9);
    v.select(0, 0.5);
    v.update(0, 16, COLUMNS);
    expect(v.to).toBeCloseTo(9, 2);
    v.followLive();
    v.update(0, 17, COLUMNS);
    expect(v.to).toBeCloseTo(10, 9);
    v.freeze(false);
    v.update(0, 18, COLUMNS);
    expect(v.to).toBeCloseTo(18, 2);
  });
});

describe('time axis', () => {
  const labels = (from: number, to: number, max: number) => {
    const axis = new TimeAxis();
    axis.fit(from, to, max);
    const found: string[] = [];
    axis.eachTick((_, text) => found.push(text));
    return [found.join(' '), axis.title];
  };

  it('ranges from microseconds to minutes', () => {
    expect(labels(8, 10, 5)).toEqual(['8.0 8.5 9.0 9.5 10.0', 's']);
    expect(labels(0, 0.5, 5)).toEqual(['0 100 200 300 400 500', 'ms']);
    expect(labels(20.0001, 20.0005, 5)).toEqual(['100 200 300 400 500', 'µs from 20.000000 s']);
    expect(labels(0, 1200, 6)).toEqual(['0 5 10 15 20', 'min']);
  });

  it('tells a moment finer than its ticks', () => {
    const axis = new TimeAxis();
    axis.fit(8, 10, 5);
    expect(axis.moment(0.123)).toBe('8.246 s');
  });
});
