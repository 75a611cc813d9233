import { ranged } from '../../shared/core/format.ts';
import type { RippleTest } from '../../shared/protocol/accuracy.ts';
import { rangeOf } from '../plot/range.ts';
import { widened } from '../plot/svg/axes.ts';
import { lineChart, USUAL_SIZE } from '../plot/svg/lineChart.ts';
import type { Size } from '../plot/svg/plot.ts';
import type { Markup } from '../ui/markup.ts';

/** Speed ripple of a scan over its way, with what is allowed (a share of the set speed), on the scale of all of `among`. */
export function rippleChart(
  test: RippleTest,
  allowed: number,
  among: readonly RippleTest[] = [test],
  size: Size = USUAL_SIZE,
): Markup {
  const { speed, peak, rms, distance, deviation } = test;
  const [low, high] = rangeOf([-1.1 * allowed, 1.1 * allowed], ...among.map((each) => each.deviation));
  return lineChart(
    {
      text: `Speed ripple at ${ranged(speed, 'mm/s')}: ${ranged(peak, '%')} peak, ${ranged(rms, '%')} rms of the set speed; allowed ${ranged(allowed, '%')}.`,
      x: {
        title: 'Way',
        unit: 'mm',
        from: 0,
        to: Math.max(...among.map((each) => each.distance.at(-1) ?? 1)),
      },
      y: { title: 'Deviation of speed', unit: '%', ...widened(low, high) },
      series: [{ name: '', x: distance, y: deviation, pen: { colour: 'var(--q-speed, #000)', width: 1.25 } }],
      band: [-allowed, allowed],
      levels: [{ y: allowed, text: `allowed ±${ranged(allowed, '%')}` }],
    },
    size,
  );
}
