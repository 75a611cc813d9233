import { ranged } from '../../shared/core/format.ts';
import type { IncrementTest } from '../../shared/protocol/accuracy.ts';
import { rangeOf } from '../plot/range.ts';
import { axes, widenedLog } from '../plot/svg/axes.ts';
import { USUAL_SIZE } from '../plot/svg/lineChart.ts';
import { circle, clipped, dot, drawing, line, type Size, textAt } from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';

const COLOUR = 'var(--q-position, #000)';

/** Steps that the tool takes against steps that are set: full dots are made for certain, open ones are not. */
export function incrementsChart(
  test: IncrementTest,
  among: readonly IncrementTest[] = [test],
  size: Size = USUAL_SIZE,
): Markup {
  const steps = among.flatMap(({ tried }) => tried.map(({ step }) => step));
  const [min, max] = rangeOf(steps.length > 0 ? steps : [1e-9, 1e-6]);
  const ends = widenedLog(min / 1.6, max * 1.6);
  // Taken steps may be far smaller than set ones, and are not shown smaller than this.
  const floor = ends.from / 5;
  const { frame, x, y, drawn } = axes(
    size,
    { title: 'Step set', unit: 'mm', ...ends, log: true },
    { title: 'Step taken', unit: 'mm', from: floor, to: ends.to, log: true },
  );
  const height = (value: number) => y.at(Math.max(value, floor));
  const marks = test.tried.map(({ step, mean, spread, made }) => {
    const at = x.at(step);
    const bar = line(at, height(mean + 2 * spread), at, height(mean - 2 * spread), {
      colour: COLOUR,
      width: 1.25,
    });
    const point = made
      ? dot(at, height(mean), 4, COLOUR)
      : circle(at, height(mean), 4, { colour: COLOUR, width: 1.5 });
    return markup`${bar}${point}`;
  });
  const text = test.smallest === null ? 'none is certain' : `smallest ${ranged(test.smallest, 'nm')}`;
  return drawing(
    size,
    `Steps taken against steps set: ${text}.`,
    markup`${drawn}
${clipped(frame, [line(x.at(ends.from), y.at(ends.from), x.at(ends.to), y.at(ends.to), 'reference'), ...marks])}
${textAt(frame.left + 10, frame.top + 20, text)}`,
  );
}
