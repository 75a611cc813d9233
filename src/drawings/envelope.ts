import { ranged } from '../../shared/core/format.ts';
import type { Envelope } from '../../shared/sizing/sizing.ts';
import { type Axes, widened } from '../plot/svg/axes.ts';
import { lineChart, USUAL_SIZE } from '../plot/svg/lineChart.ts';
import { curve, dot, labelOnWhite, line, type Size } from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';

/** So many times the speed of the job are shown, where the motors go on. */
const SPEEDS_SHOWN = 3;
const COLOUR = 'var(--q-force, #000)';
/** Room above the highest curve, as a share of it. */
const SPARE = 0.08;

/** What the motors can give at each speed, and what the job asks of them, on the scale of all of `among`. */
export function envelopeChart(
  envelope: Envelope,
  among: readonly Envelope[] = [envelope],
  size: Size = USUAL_SIZE,
): Markup {
  const { speed, continuous, peak, trajectory } = envelope;
  const job = Math.max(...among.flatMap((each) => each.trajectory.map((point) => point.speed)));
  const reach = Math.max(...among.flatMap((each) => each.speed));
  const force = Math.max(
    ...among.flatMap((each) => [...each.peak, ...each.trajectory.map((point) => point.force)]),
  );
  const outside = trajectory.filter((point) => point.force > forceAt(envelope, point.speed));
  return lineChart(
    {
      text: summary(envelope, outside.length > 0),
      x: {
        title: 'Speed',
        unit: 'm/s',
        from: 0,
        to: widened(0, Math.max(job, Math.min(reach, SPEEDS_SHOWN * job))).to,
      },
      y: { title: 'Force', unit: 'N', from: 0, to: widened(0, force * (1 + SPARE)).to },
      series: [
        { name: '', x: speed, y: peak, pen: { colour: COLOUR, width: 2 } },
        { name: '', x: speed, y: continuous, pen: { colour: COLOUR, width: 2, dash: '9 4' } },
      ],
      marks: (axes) => markup`${path(axes, trajectory)}
${outside.map((point) => dot(axes.x.at(point.speed), axes.y.at(point.force), 4, 'var(--alarm, #000)'))}
${names(axes, envelope)}`,
    },
    size,
  );
}

/** Peak force at a speed, N: between the points of its curve. */
function forceAt({ speed, peak }: Envelope, at: number): number {
  const next = speed.findIndex((each) => each >= at);
  if (next < 0) return 0;
  if (next === 0) return peak[0]!;
  const share = (at - speed[next - 1]!) / (speed[next]! - speed[next - 1]!);
  return peak[next - 1]! + share * (peak[next]! - peak[next - 1]!);
}

function path({ x, y }: Axes, trajectory: Envelope['trajectory']): Markup {
  return curve(
    trajectory.length,
    (k) => x.at(trajectory[k]!.speed),
    (k) => y.at(trajectory[k]!.force),
    { width: 1.5 },
  );
}

/** Room that a name needs beside a curve, as a share of the width. */
const BESIDE = 0.6;

/** Height of a line of names, px. */
const LINE = 17;

/** Each curve has its name on it or beside it. */
function names({ x, y, frame }: Axes, { peak, continuous, trajectory, speed, rms }: Envelope): Markup {
  const top = trajectory.reduce((best, point) => (point.force > best.force ? point : best));
  const right = x.at(Math.max(...trajectory.map((point) => point.speed))) + 8;
  const side = Math.min(x.at(speed[speed.length - 1]!), frame.left + frame.width);
  const isBeside = side < frame.left + BESIDE * frame.width;
  const forEver = `for ever ${ranged(continuous[0]!, 'N')}`;
  const forEverAt = y.at(continuous[0]!) + (isBeside ? 5 : -5);
  const beside = y.at(rms.force) + 5;
  const rmsAt = Math.abs(beside - forEverAt) < LINE ? forEverAt + LINE : beside;
  return markup`${labelOnWhite(frame.left + 8, y.at(peak[0]!) - 5, `peak ${ranged(peak[0]!, 'N')}`)}
${isBeside ? labelOnWhite(Math.max(side + 6, right), forEverAt, forEver) : labelOnWhite(side - 6, forEverAt, forEver, 'end')}
${labelOnWhite(x.at(top.speed) + 8, y.at(top.force) - 5, `job ${ranged(top.force, 'N')}`)}
${line(x.at(rms.speed), y.at(rms.force), right, rmsAt - 5, { opacity: 0.6 })}${dot(x.at(rms.speed), y.at(rms.force))}
${labelOnWhite(right + 2, rmsAt, `RMS ${ranged(rms.force, 'N')}`)}`;
}

function summary({ peak, continuous, trajectory, speed, rms }: Envelope, isOutside: boolean): string {
  const asked = Math.max(...trajectory.map((point) => point.force));
  return (
    `Force against speed. At standstill ${ranged(peak[0]!, 'N')} for a short time and ${ranged(continuous[0]!, 'N')} for ever, up to ` +
    `${ranged(speed[speed.length - 1]!, 'm/s')}. The job asks for up to ${ranged(asked, 'N')}${isOutside ? ', in part more than the motors give' : ', all within'}; RMS ${ranged(rms.force, 'N')}.`
  );
}
