import { type UnitSystem, unitIn } from '../../../shared/core/units.ts';
import type { MotionAsked } from '../../../shared/study/motionAsked.ts';
import { rangeOf } from '../../plot/range.ts';
import { widened } from '../../plot/svg/axes.ts';
import { lineChart } from '../../plot/svg/lineChart.ts';
import type { Markup } from '../../ui/markup.ts';

const HEIGHT = 240;

/** Position over the time of one cycle, as it is asked for. */
export function motionPlot(
  { time, position, moves, cycleTime }: MotionAsked,
  units: UnitSystem,
  width: number,
): Markup {
  return lineChart(
    {
      text: `Position over one cycle of ${moves.length} moves, as it is asked for.`,
      x: { title: 'Time', unit: 's', from: 0, to: cycleTime },
      y: { title: 'Position', unit: unitIn(units, 'mm'), ...widened(...rangeOf(position)) },
      series: [{ name: '', x: time, y: position, pen: { colour: 'var(--q-setpoint)', width: 2 } }],
    },
    { width, height: HEIGHT },
  );
}
