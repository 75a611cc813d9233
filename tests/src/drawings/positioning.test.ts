import { describe, expect, it } from 'vitest';
import type { PositioningTest } from '../../../shared/protocol/accuracy.ts';
import { positioningChart } from '../../../src/drawings/positioning.ts';
import { evaluatePositioning } from '../../../workers/accuracy/iso230.ts';
import { labelsIn, marksOf, pointsOf, readerOf, textsIn } from '../plot/readDrawing.ts';

/**
 * Approaches of 1, 2 and 3 µm have the mean 2 µm and, with n − 1 below, s = 1 µm: ±2s is 0 to 4 µm.
 * From above all is 5 µm less.
 */
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

  it('has a bar from mean − 2s to mean + 2s at every target in each direction', () => {
    const bars = marksOf(drawing.marks, 'line')
      .filter(({ points: [x1, , x2], pen }) => x1 === x2 && pen.colour === 'error')
      .map(({ points: [, top = Number.NaN, , foot = Number.NaN] }) => [height(top), height(foot)]);
    const upward = [expect.closeTo(4, 6), expect.closeTo(0, 6)];
    const downward = [expect.closeTo(-1, 6), expect.closeTo(-5, 6)];
    expect(bars).toEqual([upward, upward, upward, downward, downward, downward]);
  });

  it('joins the means', () => {
    const means = marksOf(drawing.marks, 'curve').map((curve) => pointsOf(curve).map(([, y]) => height(y)));
    expect(means).toEqual([
      [2, 2, 2].map((mean) => expect.closeTo(mean, 6)),
      [-3, -3, -3].map((mean) => expect.closeTo(mean, 6)),
    ]);
  });

  it('shows every single approach, and says what they come to', () => {
    const points = marksOf(drawing.marks, 'point');
    expect(points.filter(({ symbol }) => symbol === 'dot')).toHaveLength(9);
    expect(points.filter(({ symbol }) => symbol === 'ring')).toHaveLength(9);
    // A: from −5 to 4 µm. E: from −3 to 2 µm. R: 2s + 2s + |B| = 9 µm. B: 5 µm.
    expect(textsIn(drawing)).toEqual(
      expect.arrayContaining([
        'Accuracy 9.00 µm',
        'Systematic 5.00 µm',
        'Repeatability 9.00 µm',
        'Reversal 5.00 µm',
      ]),
    );
  });

  it('draws drives that are compared to one scale', () => {
    const small: PositioningTest = {
      ...sample,
      up: [[1e-9, 2e-9]],
      down: [[1e-9, 2e-9]],
      targets: [0],
      figures: evaluatePositioning([[1e-9, 2e-9]], [[1e-9, 2e-9]]),
    };
    const labels = (...tests: Parameters<typeof positioningChart>) =>
      labelsIn(positioningChart(...tests), 'end');
    const together = labels(small, [small, sample]);
    expect(together).toEqual(labels(sample, [small, sample]));
    expect(labels(small)).not.toEqual(together);
  });
});
