import { describe, expect, it } from 'vitest';
import { columnsAtSpeed } from '../../../src/charts/scanColumns.ts';

const columns = (lows: number[], highs = lows) => ({
  lows: Float64Array.from(lows),
  highs: Float64Array.from(highs),
});

describe('the columns of a scan that count for its scale', () => {
  it('are those at its speed, in either direction, after the run-in', () => {
    const speeds = columns([0, 0.5, 2, 2, 2, 2, 0, -2, -2, -2, -9, -9, Number.NaN]);
    expect([...(columnsAtSpeed(speeds, 2, 2) ?? [])]).toEqual([0, 0, 0, 0, 1, 1, 0, 0, 0, 1, 0, 0, 0]);
  });

  it('hold nothing else than that speed', () => {
    expect([...(columnsAtSpeed(columns([1, 2, 2], [2, 2, 2]), 2, 0) ?? [])]).toEqual([0, 1, 1]);
  });

  it('are none before the speed is reached: then everything counts', () => {
    expect(columnsAtSpeed(columns([0, 1, 2]), 2, 1)).toBeNull();
    expect(columnsAtSpeed(columns([]), 2, 1)).toBeNull();
  });
});
