import { inUnit, ranged } from '../../shared/core/format.ts';
import type { DisturbanceTest } from '../../shared/protocol/accuracy.ts';
import type { Axes } from '../plot/axes.ts';
import type { Drawing } from '../plot/drawing.ts';
import { footOf, type Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { label, line, type Mark } from '../plot/marks.ts';
import { greatestOf, rangeOf, widened } from '../plot/range.ts';

/**
 * Deviation of the table after a force step, with the window of plus and minus `window`, m; on the
 * scale of all of `among`.
 */
export function disturbanceChart(
  test: DisturbanceTest,
  window: number,
  among: readonly DisturbanceTest[] = [test],
  size: Size = USUAL_SIZE,
): Drawing {
  const { force, peak, stiffness, recovery, time, error } = test;
  const [low, high] = rangeOf([-1.3 * window, 1.3 * window], ...among.map((each) => each.error));
  const end = recovery === null ? 'does not recover' : `recovers in ${ranged(recovery, 's')}`;
  return lineChart(
    {
      description:
        `Force step of ${ranged(force, 'N')}: peak deviation ${ranged(peak, 'µm')}, ` +
        `stiffness ${inUnit(stiffness, 'N/µm')}, ${end}.`,
      x: {
        title: 'Time since the force step',
        unit: 's',
        from: 0,
        to: greatestOf(...among.map((each) => each.time)),
      },
      y: { title: 'Deviation', unit: 'mm', ...widened(low, high) },
      series: [{ name: '', x: time, y: error, pen: { colour: 'error', width: 2 } }],
      band: [-window, window],
      levels: [{ y: window, text: `window ±${ranged(window, 'µm')}` }],
      notes: (axes) => (recovery === null ? [] : recoveryMark(axes, recovery, end)),
    },
    size,
  );
}

/** A short vertical line where the deviation is finally back in the window. */
function recoveryMark({ frame, x }: Axes, recovery: number, text: string): Mark[] {
  const place = x.at(recovery);
  const foot = footOf(frame);
  const isRight = place > frame.left + 0.6 * frame.width;
  return [
    line(place, foot - 34, place, foot, { width: 1.5 }),
    label(place + (isRight ? -5 : 5), foot - 15, text, { align: isRight ? 'end' : 'start', halo: true }),
  ];
}
