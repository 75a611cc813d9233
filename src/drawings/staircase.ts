import { ranged } from '../../shared/core/format.ts';
import type { StaircaseTest } from '../../shared/protocol/accuracy.ts';
import type { Drawing } from '../plot/drawing.ts';
import type { Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { greatestOf, rangeOf, widened } from '../plot/range.ts';

/** Above and below the curves, as a share of what they cover. */
const ROOM = 0.02;

/** A staircase as commanded and as the tool follows it, on the scale of all of `among`. */
export function staircaseChart(
  test: StaircaseTest,
  among: readonly StaircaseTest[] = [test],
  size: Size = USUAL_SIZE,
): Drawing {
  const { step, time, set, tool, largestError, noise } = test;
  const [low, high] = rangeOf(...among.flatMap((each) => [each.set, each.tool]));
  // Neither the highest step nor the lowest lies on the edge of the chart.
  const room = ROOM * (high - low);
  return lineChart(
    {
      description:
        `Staircase of ${ranged(step, 'nm')} steps: largest error ${ranged(largestError, 'nm')}, ` +
        `noise ${ranged(noise, 'nm')} RMS.`,
      x: { title: 'Time', unit: 's', from: 0, to: greatestOf(...among.map((each) => each.time)) },
      y: {
        title: 'Position',
        unit: 'mm',
        ...widened(low - room, high + room, 6),
      },
      series: [
        { name: 'tool', x: time, y: tool, pen: { colour: 'position', width: 1.75 } },
        { name: 'setpoint', x: time, y: set, pen: { colour: 'setpoint', width: 1.5, dash: 'dashed' } },
      ],
    },
    size,
  );
}
