import { describe, expect, it } from 'vitest';
import type { RunResult } from '../../../shared/tolerance/runFigures.ts';
import type { Drawing } from '../../../src/plot/drawing.ts';
import { hasPlace, type Mark } from '../../../src/plot/marks.ts';
import { svg } from '../../../src/plot/svg.ts';
import { histogramChart, histogramOf } from '../../../src/tolerance/histogram.ts';
import { chosenMachines, type ScatteredMachine, scatterChart } from '../../../src/tolerance/scatter.ts';
import { timeLeftText } from '../../../src/ui/timeLeft.ts';

const flat = (marks: readonly Mark[]): Mark[] =>
  marks.flatMap((mark) => (mark.kind === 'clip' ? flat(mark.marks) : [mark]));
const texts = ({ marks }: Drawing) => marks.flatMap((mark) => (mark.kind === 'label' ? [mark.text] : []));

/** Everything of it can be drawn, and no word says otherwise. */
function expectSound(drawing: Drawing): void {
  expect(flat(drawing.marks).filter((mark) => !hasPlace(mark))).toEqual([]);
  expect(svg(drawing).text).not.toMatch(/NaN|Infinity|undefined/);
  expect(texts(drawing).join()).not.toMatch(/not finite|No value/);
}

describe('the histogram', () => {
  it('counts every value once, the largest in the last bin', () => {
    const { edges, counts } = histogramOf([0, 1, 1.99, 2, 4]);
    expect(counts.reduce((a, b) => a + b)).toBe(5);
    expect([edges[0], edges.at(-1), counts]).toEqual([0, 4, [2, 2, 1]]);
  });

  it('has as many bins as the square root of the machines, 40 at most', () => {
    const binsOf = (machines: number) =>
      histogramOf(Array.from({ length: machines }, (_, k) => k)).counts.length;
    expect([2, 100, 120, 10000].map(binsOf)).toEqual([2, 10, 11, 40]);
  });

  it('has no gaps between settling times that are whole samples', () => {
    const { counts } = histogramOf(Array.from({ length: 900 }, (_, k) => k + 0.05 + 125e-6 * (k % 9) - k));
    expect(counts).toEqual(new Array(9).fill(100));
  });

  it('has a bar where all values are the same', () => {
    expect(histogramOf([3, 3, 3]).counts).toEqual([3]);
    for (const value of [0, 0.05]) expectSound(histogramChart('settlingTime', [value, value], 0.06));
  });

  it('shows a limit that is near as a line, says so where it is beyond the chart, and says nothing of none', () => {
    const values = [0.05, 0.051, 0.0525];
    const near = histogramChart('settlingTime', values, 0.053);
    expectSound(near);
    expect(texts(near)).toContain('limit 53.0 ms');
    const far = histogramChart('settlingTime', values, 2);
    expectSound(far);
    expect(texts(far)).toContain('limit 2.00 s, beyond the chart');
    expect(texts(histogramChart('settlingTime', values, undefined)).join()).not.toMatch(/limit/);
    expect(near.description).toBe('Settling time of 3 machines, 50.0 ms to 52.5 ms.');
  });
});

const machine = (run: number, settlingTime: number | null): ScatteredMachine => ({
  values: Float64Array.of(3 + run / 100, 0),
  result: {
    run,
    trip: null,
    holds: true,
    figures: { settlingTime, peakError: 8e-6, rmsError: 3e-6, peakCurrent: 4, windingTemperature: 28 },
  } satisfies RunResult,
});
const limits = { settlingTime: 0.06 };

describe('the scatter', () => {
  const machines = [machine(1, 0.05), machine(2, 0.07), machine(3, null)];
  const symbols = (drawing: Drawing) =>
    flat(drawing.marks).flatMap((mark) => (mark.kind === 'point' ? [mark.symbol] : []));

  it('has a dot for a good machine, a cross for another, a ring for the worst, and a shelf for what has no value', () => {
    const drawing = scatterChart('payload', 0, 'settlingTime', machines, limits, 3);
    expectSound(drawing);
    expect(symbols(drawing)).toEqual(['dot', 'cross', 'ring']);
    expect(texts(drawing)).toContain('not settled or tripped');
    const [dot, cross, ring] = flat(drawing.marks).flatMap((mark) => (mark.kind === 'point' ? [mark] : []));
    expect(ring?.y).toBeLessThan(cross?.y ?? 0);
    expect(cross?.y).toBeLessThan(dot?.y ?? 0);
    expect(dot?.x).toBeLessThan(cross?.x ?? 0);
  });

  it('needs no shelf where all have the figure, and none of it where one has', () => {
    expect(texts(scatterChart('payload', 0, 'peakError', machines, limits, 1)).join()).not.toMatch(
      /not settled/,
    );
    expectSound(scatterChart('payload', 0, 'peakError', machines, limits, 1));
    expectSound(scatterChart('payload', 1, 'settlingTime', [machine(1, null)], limits, 1));
  });

  it('draws some of very many: bad ones among them, and always the worst', () => {
    const many = Array.from({ length: 10_000 }, (_, k) => machine(k + 1, k % 100 === 0 ? 0.07 : 0.05));
    const chosen = chosenMachines(many, limits, 4711);
    expect(chosen.length).toBeLessThan(1500);
    expect(chosen.filter(({ result }) => result.figures.settlingTime === 0.07)).toHaveLength(100);
    expect(chosen.some(({ result }) => result.run === 4711)).toBe(true);
    expect(chosenMachines(many.slice(0, 300), limits, 1)).toHaveLength(300);
  });
});

it('the time left follows from the pace so far', () => {
  expect(timeLeftText(0, 100, 3)).toBe('time left not known yet');
  expect(timeLeftText(25, 100, 5)).toBe('about 15 s left');
  expect(timeLeftText(10, 1000, 10)).toBe('about 17 min left');
});
