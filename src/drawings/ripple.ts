import { ranged, shortest } from '../../shared/core/format.ts';
import type { RippleTest } from '../../shared/protocol/accuracy.ts';
import type { Axes } from '../plot/axes.ts';
import type { Drawing } from '../plot/drawing.ts';
import type { Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { label } from '../plot/marks.ts';
import { greatestOf, rangeOf, widened } from '../plot/range.ts';

/** A limit of so many times what was measured is still drawn; room above what is drawn. */
const NEAR = 4;
const ROOM = 1.25;

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
  const [least, most] = rangeOf([0], ...among.map((each) => each.inBand.deviation));
  const judged = Math.max(most, -least);
  // What is judged fills the chart: the limit shows where it is near, and of what is unfiltered what lies within.
  const isNear = allowed > 0 && allowed <= NEAR * judged;
  const reach = ROOM * (isNear ? Math.max(judged, allowed) : judged);
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
      y: { title: 'Speed deviation', unit: '%', ...widened(-reach, reach) },
      series: [
        { name: 'unfiltered', x: distance, y: deviation, pen: { colour: 'soft', width: 0.75 } },
        { name: band, x: inBand.distance, y: inBand.deviation, pen: { colour: 'speed', width: 1.75 } },
      ],
      ...(isNear && {
        band: [-allowed, allowed] as const,
        levels: [{ y: allowed, text: `allowed ±${ranged(allowed, '%')}` }],
      }),
      ...(allowed > 0 &&
        !isNear && {
          notes: ({ frame }: Axes) => [
            label(frame.left + 8, frame.top + 10, `allowed ±${ranged(allowed, '%')}, beyond the chart`, {
              halo: true,
            }),
          ],
        }),
    },
    size,
  );
}
