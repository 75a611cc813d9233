import type { MotionAsked } from '../../shared/study/motionAsked.ts';
import { type UnitSystem, unitIn } from '../../shared/units.ts';
import { widened } from '../drawing/axes.ts';
import { lineChart } from '../drawing/lineChart.ts';
import type { Markup } from '../drawing/markup.ts';
import { rangeOf } from '../drawing/range.ts';

const HEIGHT = 240;

/** Position over the time of one cycle, as it is asked for. */
export function motionPlot(
  { time, position, moves, cycleTime }: MotionAsked,
  units: UnitSystem,
  width: number,
): Markup {
  return lineChart(
    {
      words: `Position over one cycle of ${moves.length} moves, as it is asked for.`,
      x: { title: 'Time', unit: 's', from: 0, to: cycleTime },
      y: { title: 'Position', unit: unitIn(units, 'mm'), ...widened(...rangeOf(position)) },
      series: [{ name: '', x: time, y: position, pen: { colour: 'var(--q-setpoint)', width: 2 } }],
    },
    { width, height: HEIGHT },
  );
}
