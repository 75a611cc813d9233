import { ranged } from '../../shared/core/format.ts';
import type { IncrementTest } from '../../shared/protocol/accuracy.ts';
import { axes } from '../plot/axes.ts';
import { type Drawing, drawing } from '../plot/drawing.ts';
import { footOf, rightOf, type Size } from '../plot/frame.ts';
import { inside } from '../plot/inside.ts';
import { USUAL_SIZE } from '../plot/lineChart.ts';
import { label, line, point } from '../plot/marks.ts';
import type { Pen } from '../plot/pens.ts';
import { rangeOf, widenedLog } from '../plot/range.ts';

const PEN: Pen = { colour: 'position', width: 1.5 };

/** Measured steps of the tool against commanded steps: full dots are resolved, rings are not. */
export function incrementsChart(
  test: IncrementTest,
  among: readonly IncrementTest[] = [test],
  size: Size = USUAL_SIZE,
): Drawing {
  const steps = among.flatMap(({ tried }) => tried.map(({ step }) => step));
  const [min, max] = rangeOf(steps.length > 0 ? steps : [1e-9, 1e-6]);
  const ends = widenedLog(min / 1.6, max * 1.6);
  // Measured steps may be far smaller than commanded ones, and are not shown smaller than this.
  const floor = ends.from / 5;
  const made = axes(
    size,
    { title: 'Commanded step', unit: 'mm', ...ends, log: true },
    { title: 'Measured step', unit: 'mm', from: floor, to: ends.to, log: true },
  );
  const { frame, x, y } = made;
  const height = (value: number) => y.at(Math.max(value, floor));
  const text =
    test.smallest === null
      ? 'no step is resolved'
      : `minimum incremental motion ${ranged(test.smallest, 'nm')}`;
  return drawing(size, `Measured against commanded steps: ${text}.`, [
    ...made.marks,
    ...inside(frame, [
      line(x.at(ends.from), y.at(ends.from), x.at(ends.to), y.at(ends.to), { dash: 'dotted' }),
      ...test.tried.flatMap(({ step, mean, spread, made: isMade }) => [
        line(x.at(step), height(mean + 2 * spread), x.at(step), height(mean - 2 * spread), {
          ...PEN,
          width: 1.25,
        }),
        point(x.at(step), height(mean), isMade ? 'dot' : 'ring', 4, PEN),
      ]),
    ]),
    // Points lie along the diagonal.
    label(rightOf(frame) - 10, footOf(frame) - 15, text, { align: 'end', halo: true }),
  ]);
}
