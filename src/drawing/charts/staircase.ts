import { ranged } from '../../../shared/format.ts';
import type { StaircaseTest } from '../../../shared/study/accuracy.ts';
import { widened } from '../axes.ts';
import { lineChart, USUAL_SIZE } from '../lineChart.ts';
import type { Markup } from '../markup.ts';
import type { Size } from '../plot.ts';
import { rangeOf } from '../range.ts';

/** Stairs as they are set and as the tool takes them, on the scale of all of `among`. */
export function staircaseChart(
  test: StaircaseTest,
  among: readonly StaircaseTest[] = [test],
  size: Size = USUAL_SIZE,
): Markup {
  const { step, time, set, tool, largestError, noise } = test;
  return lineChart(
    {
      words: `Stairs of ${ranged(step, 'nm')}: largest error ${ranged(largestError, 'nm')}, noise ${ranged(noise, 'nm')} rms.`,
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
