import { describe, expect, it } from 'vitest';
import type { RippleTest } from '../../../shared/protocol/accuracy.ts';
import { spectrumChart } from '../../../src/drawings/spectrum.ts';
import { temperaturesChart } from '../../../src/drawings/temperatures.ts';
import { lineChart } from '../../../src/plot/lineChart.ts';
import { recordedDrives } from '../../shared/study/recordedStudy.ts';
import { labelOf, labelsIn, marksOf, numberOf, readerOf, textsIn } from '../plot/readDrawing.ts';
import { found } from './everyChart.ts';

const { accuracy, heat } = recordedDrives().A.outcome;

describe('a cause of speed ripple', () => {
  const ripple: RippleTest = found(accuracy.ripple);

  it('is numbered at the period that it has', () => {
    const drawing = spectrumChart(ripple);
    const marks = labelsIn(drawing, 'middle').filter(({ text }) => /^[1-4]$/.test(text));
    expect(marks).toHaveLength(Math.min(4, ripple.lines.length));
    // On a logarithmic axis equal ratios are equal distances: read between 100 µm and 1 mm.
    const [tenth, one] = [labelOf(drawing, '100 µm').x, labelOf(drawing, '1 mm').x];
    for (const { text, x } of marks) {
      const period = 1e-4 * 10 ** ((x - tenth) / (one - tenth));
      expect(period / (ripple.lines[numberOf(text) - 1]?.period ?? 0)).toBeCloseTo(1, 9);
    }
  });

  it('takes as many lines of the list as it needs, inside the drawing', () => {
    const cause = 'a cause that takes many words to be told, more than one line of the list has room for';
    const lines = [{ period: 1e-3, amplitude: 0.01, inBand: 0.01, cause }];
    const drawing = spectrumChart({ ...ripple, lines }, undefined, { width: 330, height: 360 });
    expect(textsIn(drawing).join(' ')).toContain(cause);
    for (const { y } of marksOf(drawing.marks, 'label')) expect(y).toBeLessThan(drawing.size.height);
  });
});

describe('temperatures', () => {
  const heated = (max: number) => ({
    course: {
      ...heat.asSet,
      samples: heat.asSet.samples.map((sample, k) => ({ ...sample, winding: k === 0 ? 20 : max })),
    },
    other: heat.switched,
    foldback: 100,
    limit: 120,
    hasScrew: false,
  });

  it('have their limits at their heights once they come near to them', () => {
    const drawing = temperaturesChart(heated(90));
    const height = readerOf(drawing, 'end');
    const levels = marksOf(drawing.marks, 'line').filter(({ pen }) => pen.dash === 'dotted');
    const heights = levels.map(({ points: [, y] }) => height(y ?? Number.NaN));
    expect(heights).toEqual([expect.closeTo(100, 6), expect.closeTo(120, 6)]);
    expect(textsIn(drawing)).toEqual(expect.arrayContaining(['fold-back 100 °C', 'limit 120 °C']));
    expect(textsIn(drawing).join()).not.toContain('↑');
  });

  it('say where their limits are as long as those are far away', () => {
    expect(textsIn(temperaturesChart(heated(30)))).toContain('↑ fold-back 100 °C');
  });

  it('end with a cross where the drive stops itself', () => {
    const trip = { kind: 'over-temperature', time: 600, limit: 130 } as const;
    const data = heated(90);
    const samples = data.course.samples.slice(0, 11);
    const stopped = { ...data, course: { ...data.course, samples, trip } };
    const drawing = temperaturesChart(stopped, [stopped, data]);
    const crosses = marksOf(drawing.marks, 'point').filter(({ symbol }) => symbol === 'cross');
    // Winding, carrier and table.
    expect(crosses).toHaveLength(3);
    const hours = readerOf(drawing, 'middle');
    for (const { x } of crosses) expect(hours(x)).toBeCloseTo((samples.at(-1)?.time ?? 0) / 3600, 6);
  });
});

describe('a line chart', () => {
  it('writes the name of a curve at the height at which it ends', () => {
    const drawing = lineChart({
      description: 'Two lines that end at two heights.',
      x: { title: 'x', unit: 's', from: 0, to: 10 },
      y: { title: 'y', unit: 'N', from: 0, to: 10 },
      series: [
        { name: 'A high', x: [0, 10], y: [0, 8], pen: {} },
        { name: 'B low', x: [0, 10], y: [0, 2], pen: { dash: 'dashed' } },
      ],
    });
    const height = readerOf(drawing, 'end');
    expect(height(labelOf(drawing, 'A high').y)).toBeCloseTo(8, 9);
    expect(height(labelOf(drawing, 'B low').y)).toBeCloseTo(2, 9);
  });
});
