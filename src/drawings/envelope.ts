import { at } from '../../shared/core/at.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Envelope } from '../../shared/sizing/sizing.ts';
import type { Axes } from '../plot/axes.ts';
import type { Drawing } from '../plot/drawing.ts';
import { rightOf, type Size } from '../plot/frame.ts';
import { lineChart, USUAL_SIZE } from '../plot/lineChart.ts';
import { curve, label, labelWidth, line, type Mark, point } from '../plot/marks.ts';
import { greatestOf, widened } from '../plot/range.ts';

/** So many times the speed of the job are shown, where the motors go on. */
const SPEEDS_SHOWN = 3;
/** Room above the highest curve, as a share of it. */
const SPARE = 0.08;
/** Height of a line of names, px. */
const LINE = 17;

/**
 * What the motors can give at each speed, and what the job needs, on the scale of all of `among`.
 */
export function envelopeChart(
  envelope: Envelope,
  among: readonly Envelope[] = [envelope],
  size: Size = USUAL_SIZE,
): Drawing {
  const { speed, continuous, peak, trajectory } = envelope;
  const job = greatestOf(...among.map((each) => each.trajectory.map((point) => point.speed)));
  const reach = greatestOf(...among.map((each) => each.speed));
  const force = greatestOf(
    ...among.flatMap((each) => [each.peak, each.trajectory.map((point) => point.force)]),
  );
  const outside = trajectory.filter((point) => point.force > forceAt(envelope, point.speed));
  return lineChart(
    {
      description: summary(envelope, outside.length > 0),
      x: {
        title: 'Speed',
        unit: 'm/s',
        from: 0,
        to: widened(0, Math.max(job, Math.min(reach, SPEEDS_SHOWN * job))).to,
      },
      y: { title: 'Force', unit: 'N', from: 0, to: widened(0, force * (1 + SPARE)).to },
      series: [
        { name: '', x: speed, y: peak, pen: { colour: 'force', width: 2 } },
        { name: '', x: speed, y: continuous, pen: { colour: 'force', width: 2, dash: 'dashed' } },
      ],
      values: (axes) => [
        curve(
          trajectory.map((point) => point.speed),
          trajectory.map((point) => point.force),
          axes,
          { width: 1.5 },
        ),
        ...outside.map((each) =>
          point(axes.x.at(each.speed), axes.y.at(each.force), 'dot', 4, { colour: 'alarm' }),
        ),
      ],
      notes: (axes) => names(axes, envelope),
    },
    size,
  );
}

/** Peak force at a speed, N: between the points of its curve. */
function forceAt({ speed, peak }: Envelope, wanted: number): number {
  const next = speed.findIndex((each) => each >= wanted);
  if (next < 0) return 0;
  if (next === 0) return at(peak, 0);
  const [from, to] = [at(speed, next - 1), at(speed, next)];
  const [before, after] = [at(peak, next - 1), at(peak, next)];
  return before + ((wanted - from) / (to - from)) * (after - before);
}

/** Each curve has its name on it or beside it. */
function names({ x, y, frame }: Axes, { peak, continuous, trajectory, speed, rms }: Envelope): Mark[] {
  const top = trajectory.reduce((best, each) => (each.force > best.force ? each : best));
  const right = x.at(greatestOf(trajectory.map((each) => each.speed))) + 8;
  const side = Math.min(x.at(greatestOf(speed)), rightOf(frame));
  const [peakForce, continuousForce] = [at(peak, 0), at(continuous, 0)];
  const steady = `continuous ${ranged(continuousForce, 'N')}`;
  const from = Math.max(side + 6, right);
  const isBeside = from + labelWidth(steady) <= rightOf(frame);
  const continuousAt = y.at(continuousForce) + (isBeside ? 0 : -10);
  const beside = y.at(rms.force);
  const rmsAt = Math.abs(beside - continuousAt) < LINE ? continuousAt + LINE : beside;
  const above = y.at(peakForce) - 10;
  const peakAt = above < frame.top + LINE / 2 ? above + 21 : above;
  const halo = { halo: true } as const;
  return [
    label(frame.left + 8, peakAt, `peak ${ranged(peakForce, 'N')}`, halo),
    isBeside
      ? label(from, continuousAt, steady, halo)
      : label(rightOf(frame) - 6, continuousAt, steady, { ...halo, align: 'end' }),
    label(x.at(top.speed) + 8, y.at(top.force) - 10, `job ${ranged(top.force, 'N')}`, halo),
    line(x.at(rms.speed), y.at(rms.force), right, rmsAt, { colour: 'strong' }),
    point(x.at(rms.speed), y.at(rms.force), 'dot', 3.5),
    label(right + 2, rmsAt, `RMS ${ranged(rms.force, 'N')}`, halo),
  ];
}

function summary({ peak, continuous, trajectory, speed, rms }: Envelope, isOutside: boolean): string {
  const needed = ranged(greatestOf(trajectory.map((point) => point.force)), 'N');
  const verdict = isOutside ? 'partly more than the motors can give' : 'all within the peak force';
  const standing = `${ranged(at(peak, 0), 'N')} peak and ${ranged(at(continuous, 0), 'N')} continuous`;
  return (
    `Force against speed. At standstill ${standing}, up to ${ranged(greatestOf(speed), 'm/s')}. ` +
    `The job needs up to ${needed}, ${verdict}; ` +
    `RMS ${ranged(rms.force, 'N')}.`
  );
}
