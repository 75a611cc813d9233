import { describe, expect, it } from 'vitest';
import { Cursor, intervalText } from '../../../src/charts/cursor.ts';
import { pressKey } from '../../../src/charts/keys.ts';
import { TimeView } from '../../../src/charts/timeView.ts';

const COLUMNS = 200;

function setUp() {
  const view = new TimeView(2);
  const cursor = new Cursor();
  view.update(0, 10, COLUMNS);
  return {
    view,
    cursor,
    press(key: string) {
      const meant = pressKey(key, view, cursor, COLUMNS);
      view.update(0, 10, COLUMNS);
      return meant;
    },
  };
}

describe('keys of the charts', () => {
  it('pan by a tenth, and follow the run again with Escape', () => {
    const { view, cursor, press } = setUp();
    press('ArrowLeft');
    press('ArrowLeft');
    expect([view.live, view.to]).toEqual([false, expect.closeTo(9.6, 6)]);
    press('ArrowRight');
    expect(view.to).toBeCloseTo(9.8, 6);
    press('[');
    press('Escape');
    expect([view.live, view.to, cursor.fraction]).toEqual([true, 10, null]);
  });

  it('zoom in and out about the cursor', () => {
    const { view, cursor, press } = setUp();
    press('ArrowLeft');
    cursor.fraction = 0.5;
    const about = view.timeAt(0.5);
    press('+');
    expect(view.to - view.from).toBeCloseTo(1.6, 9);
    expect(view.timeAt(0.5)).toBeCloseTo(about, 1);
    press('-');
    expect(view.to - view.from).toBeCloseTo(2, 9);
  });

  it('bring the cursor in at the newest column and move it, never off the chart', () => {
    const { cursor, press } = setUp();
    press('[');
    expect(cursor.column(COLUMNS)).toBe(COLUMNS - 1);
    press('[');
    press('[');
    expect(cursor.column(COLUMNS)).toBe(COLUMNS - 3);
    press(']');
    expect(cursor.column(COLUMNS)).toBe(COLUMNS - 2);
    press('}');
    expect(cursor.column(COLUMNS)).toBe(COLUMNS - 1);
    for (let i = 0; i < 20; i++) press('{');
    expect(cursor.column(COLUMNS)).toBe(0);
  });

  it('set a second cursor that stays at its moment, and take it away again', () => {
    const { view, cursor, press } = setUp();
    press('J');
    expect(cursor.mark).toBeNull();
    cursor.fraction = 0.5;
    press('j');
    expect(cursor.mark).toBeCloseTo(9, 1);
    const moment = cursor.mark;
    press('ArrowLeft');
    press('+');
    expect(cursor.mark).toBe(moment);
    expect(view.timeAt(cursor.markFraction(view) ?? Number.NaN)).toBeCloseTo(moment ?? 0, 9);
    for (let i = 0; i < 30; i++) press('ArrowLeft');
    expect(cursor.markFraction(view)).toBeNull();
    press('J');
    expect(cursor.mark).toBeNull();
    press('J');
    press('Escape');
    expect([cursor.mark, cursor.fraction]).toEqual([null, null]);
  });

  it('tell the time between the cursors and the frequency of that period', () => {
    expect(intervalText(0.0125)).toBe('Δt 12.5 ms, 1/Δt 80.0 Hz');
    expect(intervalText(-0.0125)).toBe('Δt −12.5 ms, 1/Δt 80.0 Hz');
    expect(intervalText(0)).toBe('Δt 0 s');
  });

  it('leave every other key to the page', () => {
    const { press } = setUp();
    expect([' ', 'Enter', 'a', 'Tab', '1'].map(press)).toEqual([false, false, false, false, false]);
  });
});
