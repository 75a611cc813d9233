import { ranged } from '../../shared/core/format.ts';
import type { StaircaseTest } from '../../shared/protocol/accuracy.ts';
import { rangeOf } from '../plot/range.ts';
import { widened } from '../plot/svg/axes.ts';
import { lineChart, USUAL_SIZE } from '../plot/svg/lineChart.ts';
import type { Size } from '../plot/svg/plot.ts';
import type { Markup } from '../ui/markup.ts';

/** Stairs as they are set and as the tool takes them, on the scale of all of `among`. */
export function staircaseChart(
  test: StaircaseTest,
  among: readonly StaircaseTest[] = [test],
  size: Size = USUAL_SIZE,
): Markup {
  const { step, time, set, tool, largestError, noise } = test;
  return lineChart(
    {
      text: `Stairs of ${ranged(step, 'nm')}: largest error ${ranged(largestError, 'nm')}, noise ${ranged(noise, 'nm')} rms.`,
      x: { title: 'Time', unit: 's', from: 0, to: Math.max(...among.map((each) => each.time.at(-1) ?? 1)) },
      y: {
        title: 'Height',
        unit: 'mm',
        ...widened(...rangeOf(...among.flatMap((each) => [each.set, each.tool])), 6),
      },
      series: [
        { name: 'tool', x: time, y: tool, pen: { colour: 'var(--q-position, #000)', width: 1.75 } },
        { name: 'set', x: time, y: set, pen: { colour: 'var(--q-setpoint, #000)', width: 1.5, dash: '6 4' } },
      ],
    },
    size,
  );
}
