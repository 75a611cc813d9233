import { describe, expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../../scenes/index.ts';
import { at } from '../../../shared/core/at.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { BodeChart } from '../../../src/plot/loop/bode.ts';
import { bodeSheet } from '../../../src/plot/loop/bodeSheet.ts';
import { eigenvalueMarks } from '../../../src/plot/loop/eigenvalues.ts';
import { FrequencyAxis } from '../../../src/plot/loop/frequencyAxis.ts';
import { frequencyLabels } from '../../../src/plot/loop/graph.ts';
import { loopAlone } from '../../../src/plot/loop/loopData.ts';
import { nyquistMarks, nyquistSheet } from '../../../src/plot/loop/nyquist.ts';
import { Plane } from '../../../src/plot/loop/plane.ts';
import type { Mark } from '../../../src/plot/marks.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { labelOf, marksOf, pairsOf, pointsOf } from './readDrawing.ts';

const { parameters: p } = DEFAULT_SCENE;
const analysis = analyse(
  { ...p, filter1: 'notch', filter3: 'low-pass' },
  { ...startingPoint(p), friction: 'sliding' },
);
const data = loopAlone(analysis);
const { figures } = analysis;

/** The open loop as the page shows it, of another size than the sheet. */
function pageMarks(): Mark[] {
  const axis = new FrequencyAxis();
  axis.setRange(1, 4000);
  const chart = new BodeChart('open', axis);
  chart.magnitude.frame = { left: 40, top: 0, width: 300, height: 200 };
  chart.phase.frame = { left: 40, top: 210, width: 300, height: 100 };
  chart.fit(data, 14);
  return [
    ...chart.magnitudeMarks(data, 14),
    ...frequencyLabels(chart.phase, 14),
    ...chart.phaseMarks(data, 14),
  ];
}

// Read as a person would: by the labels of the axes.
describe.each([
  ['on the page', { marks: pageMarks() }],
  ['on the gain sheet', bodeSheet(analysis)],
])('the Bode plot %s', (_, drawing) => {
  const [ten, hundred] = [labelOf(drawing, '10').x, labelOf(drawing, '100').x];
  const frequencyAt = (x: number) => 10 ** (1 + (x - ten) / (hundred - ten));
  const [magnitude, phase] = marksOf(drawing.marks, 'curve').map(pointsOf);

  it('crosses 0 dB at the crossovers of the figures', () => {
    const zero = labelOf(drawing, '0').y;
    const curve = magnitude ?? [];
    const crossings = curve.slice(1).flatMap(([x, y], k) => {
      const [lastX, lastY] = at(curve, k);
      const crosses = (lastY - zero) * (y - zero) < 0;
      return crosses ? [lastX + ((zero - lastY) / (y - lastY)) * (x - lastX)] : [];
    });
    const found = crossings.map(frequencyAt).filter((frequency) => frequency > 1);
    expect(found).toHaveLength(figures.crossovers.length);
    for (const [k, frequency] of found.entries())
      expect(Math.abs(frequency / at(figures.crossovers, k) - 1)).toBeLessThan(0.01);
  });

  it('has its margins as bars from the curve to 0 dB and to −180°', () => {
    const bars = marksOf(drawing.marks, 'line').filter(({ pen }) => pen.colour === 'accent');
    const [gain, margin] = bars.map(({ points }) => pairsOf(points));
    const reversed = labelOf(drawing, '−180°').y;
    for (const [bar, curve, edge, frequency] of [
      [gain, magnitude, labelOf(drawing, '0').y, figures.gainMargin?.frequency],
      [margin, phase, reversed, figures.phaseMargin?.frequency],
    ] as const) {
      const [[x, from], [, to]] = [at(bar ?? [], 0), at(bar ?? [], 1)];
      expect(frequencyAt(x) / (frequency ?? 0)).toBeCloseTo(1, 6);
      // The exact margin beside a phase between two points of the grid.
      expect(from).toBeCloseTo(edge, 1);
      const before = (curve ?? []).findLast(([place]) => place <= x);
      expect(Math.abs(to - at(before ?? [], 1))).toBeLessThan(1);
    }
  });
});

describe.each([
  [
    'on the page',
    (() => {
      const plane = new Plane({ re: -0.6, im: 0, half: 1.5 }, [0.05, 500]);
      plane.frame = { left: 30, top: 0, width: 300, height: 240 };
      return { marks: nyquistMarks(plane, data, 14, []) };
    })(),
  ],
  ['on the gain sheet', nyquistSheet(analysis)],
])('the Nyquist plot %s', (_, drawing) => {
  it('keeps clear of −1 by the modulus margin, which is the radius of the circle round it', () => {
    const [unit, circle] = marksOf(drawing.marks, 'circle');
    if (!unit || !circle) throw new Error('no circles');
    expect(unit.x - circle.x).toBeCloseTo(unit.radius, 9);
    expect(circle.radius / unit.radius).toBeCloseTo(figures.modulusMargin.value, 9);
    const locus = at(marksOf(drawing.marks, 'curve'), 1);
    const nearest = Math.min(...pointsOf(locus).map(([x, y]) => Math.hypot(x - circle.x, y - circle.y)));
    expect(Math.abs(nearest - circle.radius) / unit.radius).toBeLessThan(0.01);
  });
});

describe('the plot of eigenvalues', () => {
  it('has a cross for each, in the alarm colour outside the unit circle', () => {
    const plane = new Plane({ re: 0, im: 0, half: 1.15 }, [0.005, 3]);
    plane.frame = { left: 0, top: 0, width: 230, height: 230 };
    const crosses = (of: typeof data) =>
      marksOf(eigenvalueMarks(plane, of, 14), 'point').map(({ x, y, pen }) => [
        (x - 115) / 100,
        (115 - y) / 100,
        pen.colour,
      ]);
    expect(crosses(data)).toEqual(
      Array.from(analysis.eigenvaluesRe, (re, k) => [
        expect.closeTo(re, 9),
        expect.closeTo(at(analysis.eigenvaluesIm, k), 9),
        'ink',
      ]),
    );
    const [first = 0, ...others] = analysis.eigenvaluesRe;
    const unstable = { ...analysis, eigenvaluesRe: Float64Array.of(first + 0.1, ...others) };
    expect(crosses(loopAlone(unstable))[0]?.[2]).toBe('alarm');
  });
});

describe('a zoomed plot', () => {
  it('says so when no part of a curve is in view', () => {
    const plane = new Plane({ re: 1000, im: 1000, half: 1 }, [0.05, 500]);
    plane.frame = { left: 0, top: 0, width: 200, height: 200 };
    const labels = marksOf(nyquistMarks(plane, data, 14, []), 'label');
    expect(labels.map(({ text }) => text)).toContain('No value lies within the axes');
  });
});
