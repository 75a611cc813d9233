import { describe, expect, it } from 'vitest';
import { drawing } from '../../../src/plot/drawing.ts';
import { inside } from '../../../src/plot/inside.ts';
import { lineChart } from '../../../src/plot/lineChart.ts';
import { curve, line, type Mark, point } from '../../../src/plot/marks.ts';
import { linearScale, logScale } from '../../../src/plot/scale.ts';
import { svg } from '../../../src/plot/svg.ts';
import { marksOf, pointsOf, textsIn } from './readDrawing.ts';

const FRAME = { left: 0, top: 0, width: 100, height: 100 };
const SCALES = { x: linearScale(0, 10, 0, 100), y: linearScale(0, 10, 100, 0) };
const { NaN: NOTHING, POSITIVE_INFINITY: ENDLESS } = Number;

const curveOf = (...ys: number[]) =>
  curve(
    ys.map((_, k) => k),
    ys,
    SCALES,
    {},
  );
const remarksOn = (...marks: Mark[]) => textsIn({ marks: inside(FRAME, marks) });

describe('a curve', () => {
  it('has a gap where values are not finite, and counts them', () => {
    const { runs, count, missing } = curveOf(1, 2, NOTHING, 4, ENDLESS, 5);
    expect(runs).toEqual([
      [0, 90, 10, 80],
      [30, 60],
      [50, 50],
    ]);
    expect([count, missing]).toEqual([6, 2]);
  });

  it('leaves out points that nobody can tell apart, but never its last', () => {
    const ys = Array.from({ length: 1001 }, (_, k) => 5 + 1e-4 * k);
    const drawn = pointsOf(
      curve(
        ys.map((_, k) => k / 100),
        ys,
        SCALES,
        {},
      ),
    );
    expect(drawn.length).toBeGreaterThan(200);
    expect(drawn.length).toBeLessThan(300);
    expect(drawn.at(-1)).toEqual([100, expect.closeTo(49, 9)]);
  });

  it('runs off the foot where a logarithmic scale has no place for zero', () => {
    const y = logScale(0.1, 10, 100, 0);
    const { missing, runs } = curve([0, 1], [1, 0], { ...SCALES, y }, {});
    expect(missing).toBe(0);
    expect(runs[0]?.at(-1)).toBeGreaterThan(1000);
  });
});

describe('what is drawn in a frame', () => {
  it('needs no words while every value is finite and some can be seen', () => {
    expect(remarksOn(curveOf(1, 2, 3))).toEqual([]);
    expect(remarksOn(point(50, 50, 'dot', 2))).toEqual([]);
  });

  it.each([
    ['1 value is not finite', [curveOf(1, NOTHING, 3)]],
    ['3 values are not finite', [curveOf(1, NOTHING, 3), curveOf(NOTHING, 2, ENDLESS)]],
    ['1 value is not finite', [point(50, 50, 'dot', 2), point(50, NOTHING, 'dot', 2)]],
    ['None of 2 values is finite', [curveOf(NOTHING, NOTHING)]],
    ['The value is not finite', [point(NOTHING, 1, 'dot', 2)]],
    ['No values to draw', [curveOf(), line(0, 0, 100, 100)]],
    ['No value lies within the axes', [curveOf(20, 30)]],
  ])('says “%s”', (text, marks) => {
    expect(remarksOn(...marks)).toEqual([text]);
  });

  it('can be seen where a line crosses it between two points outside', () => {
    const crossing = curve([-10, 20], [5, 5], SCALES, {});
    expect(remarksOn(crossing)).toEqual([]);
  });

  it('is said to whoever cannot see it as well', () => {
    const { description } = drawing({ width: 100, height: 100 }, 'A curve.', inside(FRAME, [curveOf()]));
    expect(description).toBe('A curve. No values to draw.');
  });
});

describe('a line chart', () => {
  const chart = (y: number[]) =>
    lineChart({
      description: 'A line.',
      x: { title: 'x', unit: 's', from: 0, to: y.length },
      y: { title: 'y', unit: 'N', from: 0, to: 10 },
      series: [{ name: 'force', x: y.map((_, k) => k), y, pen: {} }],
    });

  it('draws the finite part of a curve and names it at its last finite value', () => {
    const drawn = chart([1, 2, NOTHING, 4, NOTHING]);
    expect(marksOf(drawn.marks, 'curve').map(({ runs }) => runs.length)).toEqual([2]);
    expect(textsIn(drawn)).toEqual(expect.arrayContaining(['2 values are not finite', 'force']));
    expect(svg(drawn).text).not.toMatch(/NaN|Infinity/);
  });

  it('without any value says so instead of looking like zero', () => {
    expect(textsIn(chart([]))).toContain('No values to draw');
    expect(textsIn(chart([NOTHING, NOTHING]))).toContain('None of 2 values is finite');
  });
});
