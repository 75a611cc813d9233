import { inUnit, ranged } from '../../shared/core/format.ts';
import type { DisturbanceTest } from '../../shared/protocol/accuracy.ts';
import { rangeOf } from '../plot/range.ts';
import { widened } from '../plot/svg/axes.ts';
import { lineChart, USUAL_SIZE } from '../plot/svg/lineChart.ts';
import { labelOnWhite, line, type Size } from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';

/** Deviation of the table after a force has come, with the window of plus and minus `window`, m; on the scale of all of `among`. */
export function disturbanceChart(
  test: DisturbanceTest,
  window: number,
  among: readonly DisturbanceTest[] = [test],
  size: Size = USUAL_SIZE,
): Markup {
  const { force, peak, stiffness, recovery, time, error } = test;
  const [low, high] = rangeOf([-1.3 * window, 1.3 * window], ...among.map((each) => each.error));
  const end = recovery === null ? 'does not come back' : `back after ${ranged(recovery, 's')}`;
  return lineChart(
    {
      text: `Under ${ranged(force, 'N')}: deviation ${ranged(peak, 'µm')}, ${inUnit(stiffness, 'N/µm')}, ${end}.`,
      x: {
        title: 'Since the force came',
        unit: 's',
        from: 0,
        to: Math.max(...among.map((each) => each.time.at(-1) ?? 1)),
      },
      y: { title: 'Deviation', unit: 'mm', ...widened(low, high) },
      series: [{ name: '', x: time, y: error, pen: { colour: 'var(--q-error, #000)', width: 2 } }],
      band: [-window, window],
      levelText: 'right',
      levels: [{ y: window, text: `window ±${ranged(window, 'µm')}` }],
      marks: ({ frame, x }) => {
        if (recovery === null) return markup``;
        const at = x.at(recovery);
        const anchor = at > frame.left + 0.6 * frame.width ? 'end' : 'start';
        const foot = frame.top + frame.height;
        return markup`${line(at, foot - 34, at, foot, { width: 1.5 })}${labelOnWhite(anchor === 'end' ? at - 5 : at + 5, foot - 10, end, anchor)}`;
      },
    },
    size,
  );
}
