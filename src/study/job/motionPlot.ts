import type { UnitSystem } from '../../../shared/core/unitSystem.ts';
import { unitIn } from '../../../shared/core/units.ts';
import type { MotionAsked } from '../../../shared/study/motionAsked.ts';
import type { Drawing } from '../../plot/drawing.ts';
import { lineChart } from '../../plot/lineChart.ts';
import { rangeOf, widened } from '../../plot/range.ts';

const HEIGHT = 240;

/** Commanded position over the time of one cycle. */
export function motionPlot(
  { time, position, moves, cycleTime }: MotionAsked,
  units: UnitSystem,
  width: number,
): Drawing {
  return lineChart(
    {
      description: `Commanded position over one cycle of ${moves.length} moves.`,
      x: { title: 'Time', unit: 's', from: 0, to: cycleTime },
      y: { title: 'Position', unit: unitIn(units, 'mm'), ...widened(...rangeOf(position)) },
      series: [{ name: '', x: time, y: position, pen: { colour: 'setpoint', width: 2 } }],
    },
    { width, height: HEIGHT },
  );
}
