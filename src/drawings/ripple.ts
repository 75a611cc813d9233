import { ranged, shortest } from '../../shared/core/format.ts';
import type { RippleTest } from '../../shared/protocol/accuracy.ts';
import type { Drawing } from '../plot/drawing.ts';
import type { Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { greatestOf, rangeOf, widened } from '../plot/range.ts';

/**
 * Speed ripple of a scan over its distance, with what is allowed (a share of the set speed; 0: any), on the
 * scale of all of `among`.
 */
export function rippleChart(
  test: RippleTest,
  allowed: number,
  among: readonly RippleTest[] = [test],
  size: Size = USUAL_SIZE,
): Drawing {
  const { speed, inBand, peak, bandwidth, distance, deviation } = test;
  const [low, high] = rangeOf([-1.1 * allowed, 1.1 * allowed], ...among.map((each) => each.deviation));
  const band = `up to ${shortest(bandwidth, 'Hz')}`;
  return lineChart(
    {
      description:
        `Speed ripple at ${ranged(speed, 'mm/s')}: ${ranged(inBand.peak, '%')} peak ${band}, ${ranged(peak, '%')} peak unfiltered, ` +
        `of the set speed${allowed > 0 ? `; allowed ${ranged(allowed, '%')}` : ''}.`,
      x: {
        title: 'Distance',
        unit: 'mm',
        from: 0,
        to: greatestOf(...among.map((each) => each.distance)),
      },
      y: { title: 'Speed deviation', unit: '%', ...widened(low, high) },
      series: [
        { name: 'unfiltered', x: distance, y: deviation, pen: { colour: 'soft', width: 0.75 } },
        { name: band, x: inBand.distance, y: inBand.deviation, pen: { colour: 'speed', width: 1.75 } },
      ],
      ...(allowed > 0 && {
        band: [-allowed, allowed] as const,
        levels: [{ y: allowed, text: `allowed ±${ranged(allowed, '%')}` }],
      }),
    },
    size,
  );
}
