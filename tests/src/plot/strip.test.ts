import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { DASHES } from '../../../src/plot/pens.ts';
import { linearScale, mirrored } from '../../../src/plot/scale.ts';
import { stripPath } from '../../../src/plot/strip/stripPath.ts';

const MAP = { left: 100, columnWidth: 1, y: linearScale(-1, 1, 100, 0) };

/** The outlines a path is made of, as [x, y] corners. */
function outlines(
  lows: number[],
  highs: number[],
  { dash = DASHES.solid as readonly number[], map = MAP, width = 2, firstColumn = 0 } = {},
): [number, number][][] {
  const found: [number, number][][] = [];
  const context = {
    moveTo: (x: number, y: number) => found.push([[x, y]]),
    lineTo: (x: number, y: number) => at(found, found.length - 1).push([x, y]),
  };
  const columns = {
    lows: Float64Array.from(lows),
    highs: Float64Array.from(highs),
    count: lows.length,
    firstColumn,
  };
  stripPath(context, columns, map, dash, width);
  return found;
}

const ys = (outline: [number, number][]) => outline.map(([, y]) => y);
const xs = (outline: [number, number][]) => outline.map(([x]) => x);

describe('strip', () => {
  it('is a line of the given width where minimum and maximum meet', () => {
    const outline = at(outlines([0, 0, 0], [0, 0, 0]), 0);
    expect([Math.min(...ys(outline)), Math.max(...ys(outline))]).toEqual([49, 51]);
    expect([Math.min(...xs(outline)), Math.max(...xs(outline))]).toEqual([100, 103]);
  });

  it('reaches from minimum to maximum in the column of a spike', () => {
    const outline = at(outlines([0, -0.5, 0], [0, 0.8, 0]), 0);
    const inSpike = outline.filter(([x]) => x === 101.5).map(([, y]) => y);
    expect(Math.min(...inSpike)).toBeCloseTo(50 - 0.8 * 50 - 1, 9);
    expect(Math.max(...inSpike)).toBeCloseTo(50 + 0.5 * 50 + 1, 9);
  });

  it('takes no more corners for a level line than for its ends, and follows a slow ramp to a sixty-fourth of a pixel', () => {
    const flat = new Array<number>(800).fill(0.25);
    expect(at(outlines(flat, flat), 0).length).toBeLessThan(8);
    // 50 pixels a unit: a hundredth of a pixel from column to column.
    const ramp = Array.from({ length: 800 }, (_, c) => 2e-4 * c);
    const outline = at(outlines(ramp, ramp), 0);
    expect(outline.length).toBeLessThan(1700);
    const line = (x: number) => 50 - 50 * 2e-4 * (x - 100.5);
    for (const [x, y] of outline.filter((_, k) => k > 0 && k < outline.length - 1)) {
      const middle = Math.min(Math.max(x, 100.5), 899.5);
      expect(Math.min(Math.abs(y + 1 - line(middle)), Math.abs(y - 1 - line(middle)))).toBeLessThan(0.03);
    }
  });

  it('joins a jump between two columns', () => {
    const outline = at(outlines([-0.5, 0.5], [-0.5, 0.5]), 0);
    const corners = (place: number) => outline.filter(([x]) => x === place).map(([, y]) => y);
    // The second column reaches down to the first, whose lower edge goes on level from there.
    expect(corners(101.5)).toEqual([24]);
    expect(corners(102)).toEqual([24, 76]);
    expect(corners(100)).toEqual([74, 76]);
  });

  it('leaves a gap where nothing was recorded', () => {
    const gap = Number.NaN;
    expect(
      outlines([0, 0, gap, gap, 0], [0, 0, gap, gap, 0]).map((outline) => [
        at(at(outline, 0), 0),
        Math.max(...xs(outline)),
      ]),
    ).toEqual([
      [100, 102],
      [104, 105],
    ]);
  });

  it('breaks into dashes that move with time', () => {
    const flat = new Array<number>(30).fill(0);
    expect(outlines(flat, flat, { dash: [10, 5] }).map((o) => at(at(o, 0), 0))).toEqual([100, 115]);
    expect(outlines(flat, flat, { dash: [10, 5], firstColumn: 4 }).map((o) => at(at(o, 0), 0))).toEqual([
      100, 111, 126,
    ]);
  });

  it('shows a spike that falls between two dashes', () => {
    const flat = new Array<number>(15).fill(0);
    const spike = flat.map((_, i) => (i === 12 ? 0.9 : 0));
    expect(outlines(flat, spike, { dash: [10, 5] }).map((o) => at(at(o, 0), 0))).toEqual([100, 112]);
  });

  it('mirrors a limit to the other side of zero, dashes included', () => {
    const half = new Array<number>(15).fill(0.5);
    const upper = at(outlines(half, half, { dash: [10, 5] }), 0);
    const lower = at(outlines(half, half, { dash: [10, 5], map: { ...MAP, y: mirrored(MAP.y) } }), 0);
    expect([Math.min(...ys(upper)), Math.max(...ys(upper))]).toEqual([24, 26]);
    expect([Math.min(...ys(lower)), Math.max(...ys(lower))]).toEqual([74, 76]);
    expect(xs(lower)).toEqual(xs(upper));
  });
});
