import { describe, expect, it } from 'vitest';
import type { PositioningTest } from '../../../shared/protocol/accuracy.ts';
import { positioningChart } from '../../../src/drawings/positioning.ts';
import { evaluatePositioning } from '../../../workers/accuracy/iso230.ts';
import { curvesIn, readerOf } from '../plot/readDrawing.ts';

/** Approaches of 1, 2 and 3 µm have the mean 2 µm and, with n − 1 below, s = 1 µm: ±2s is 0 to 4 µm. From above all is 5 µm less. */
const up = [-0.1, 0, 0.1].map(() => [1e-6, 2e-6, 3e-6]);
const down = up.map((row) => row.map((value) => value - 5e-6));
const sample: PositioningTest = {
  state: 'cold',
  targets: [-0.1, 0, 0.1],
  up,
  down,
  figures: evaluatePositioning(up, down),
};

describe('the positioning plot', () => {
  const drawing = positioningChart(sample);
  const height = readerOf(drawing, 'end');
  const verticals = curvesIn(drawing).filter(([from, to, more]) => !more && from![0] === to![0]);

  it('has a bar from mean − 2s to mean + 2s at every target in each direction', () => {
    expect(verticals).toHaveLength(6);
    const ends = verticals.map(([top, foot]) => [height(top![1]), height(foot![1])]);
    for (const [top, foot] of ends.slice(0, 3)) {
      expect(top).toBeCloseTo(4, 1);
      expect(foot).toBeCloseTo(0, 1);
    }
    for (const [top, foot] of ends.slice(3)) {
      expect(top).toBeCloseTo(-1, 1);
      expect(foot).toBeCloseTo(-5, 1);
    }
  });

  it('joins the means', () => {
    const [upward, downward] = curvesIn(drawing).filter((path) => path.length === 3);
    for (const [, y] of upward!) expect(height(y)).toBeCloseTo(2, 1);
    for (const [, y] of downward!) expect(height(y)).toBeCloseTo(-3, 1);
  });

  it('shows every single approach, and says A, E, R and B', () => {
    expect(drawing.text.match(/<circle/g)).toHaveLength(18);
    // A: from −5 to 4 µm. E: from −3 to 2 µm. R: 2s + 2s + |B| = 9 µm. B: 5 µm.
    for (const label of ['A 9.00 µm', 'E 5.00 µm', 'R 9.00 µm', 'B 5.00 µm'])
      expect(drawing.text).toContain(label);
  });

  it('draws drives that are compared to one scale', () => {
    const small: PositioningTest = {
      ...sample,
      up: [[1e-9, 2e-9]],
      down: [[1e-9, 2e-9]],
      targets: [0],
      figures: evaluatePositioning([[1e-9, 2e-9]], [[1e-9, 2e-9]]),
    };
    const labels = (text: string) => text.match(/text-anchor="end">[^<]+</g);
    const together = positioningChart(small, [small, sample]);
    expect(labels(together.text)).toEqual(labels(positioningChart(sample, [small, sample]).text));
    expect(labels(positioningChart(small).text)).not.toEqual(labels(together.text));
  });
});
