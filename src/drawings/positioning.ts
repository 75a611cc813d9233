import { ranged } from '../../shared/core/format.ts';
import type { PositioningTest } from '../../shared/protocol/accuracy.ts';
import { rangeOf } from '../plot/range.ts';
import { type Axes, axes, widened } from '../plot/svg/axes.ts';
import {
  circle,
  clipped,
  curve,
  dot,
  drawing,
  labelWidth,
  line,
  type Pen,
  type Size,
  textAt,
} from '../plot/svg/plot.ts';
import { type Markup, markup } from '../ui/markup.ts';

const POSITIONING_SIZE: Size = { width: 640, height: 300 };

const COLOUR = 'var(--q-error, #000)';
const UP: Pen = { colour: COLOUR, width: 2 };
const DOWN: Pen = { colour: COLOUR, width: 2, dash: '7 4' };
/** Narrower than this, the figures stand below instead of beside. */
const NARROW = 460;
const ROW = 20;
/** Room for the bars of A and E beside the frame, px. */
const SPANS = 48;
/** Bars and dots of up and down stand beside each other, this far from the target, px. */
const BESIDE = 4;
const CAP = 3;

/**
 * Deviation of the tool from each target after ISO 230-2: single approaches as dots, their means joined, bars of plus and minus 2 s; in
 * +x full and solid, in −x open and dashed. On the scale of all of `among`.
 */
export function positioningChart(
  test: PositioningTest,
  among: readonly PositioningTest[] = [test],
  size: Size = POSITIONING_SIZE,
): Markup {
  const { targets, figures } = test;
  const range = widened(...rangeOf(...among.map(extent)));
  const width = rangeOf(...among.map((each) => each.targets));
  const margin = 0.06 * (width[1] - width[0] || 1e-3);
  const below = size.width < NARROW;
  const text = figureText(test);
  const plot = below ? { ...size, height: size.height - 2 * ROW } : size;
  const made = axes(
    plot,
    { title: 'Target', unit: 'mm', from: width[0] - margin, to: width[1] + margin },
    { title: 'Deviation', unit: 'mm', ...range },
    below ? SPANS : SPANS + 14 + Math.max(...text.map(labelWidth)),
  );
  const { frame, x, y, drawn } = made;
  const approaches = (values: readonly number[], k: number, shift: number, filled: boolean) =>
    values.map((value) =>
      filled
        ? dot(x.at(targets[k]!) + shift, y.at(value), 2, COLOUR)
        : circle(x.at(targets[k]!) + shift, y.at(value), 2, { colour: COLOUR }),
    );
  const joined = (means: readonly number[], pen: Pen) =>
    curve(
      targets.length,
      // Not moved aside: along a slope that would look like lost motion.
      (k) => x.at(targets[k]!),
      (k) => y.at(means[k]!),
      pen,
    );
  const bars = (means: readonly number[], spreads: readonly number[], shift: number) =>
    targets.map((target, k) =>
      bar(x.at(target) + shift, y.at(means[k]! + 2 * spreads[k]!), y.at(means[k]! - 2 * spreads[k]!), COLOUR),
    );
  return drawing(
    size,
    summary(test),
    markup`${drawn}
${clipped(frame, [
  ...bars(figures.meanUp, figures.spreadUp, -BESIDE),
  ...bars(figures.meanDown, figures.spreadDown, BESIDE),
  joined(figures.meanUp, UP),
  joined(figures.meanDown, DOWN),
  ...test.up.flatMap((values, k) => approaches(values, k, -BESIDE, true)),
  ...test.down.flatMap((values, k) => approaches(values, k, BESIDE, false)),
])}
${spans(test, made)}
${text.map((each, k) =>
  below
    ? textAt(frame.left + (k % 2) * (frame.width / 2 + 24), plot.height + 14 + ROW * Math.floor(k / 2), each)
    : textAt(frame.left + frame.width + SPANS + 8, frame.top + 24 + 22 * k, each),
)}`,
  );
}

/** All that has to be on the scale, and zero. */
function extent({ up, down, figures }: PositioningTest): number[] {
  const { meanUp, meanDown, spreadUp, spreadDown } = figures;
  const bars = (means: readonly number[], spreads: readonly number[]) =>
    means.flatMap((mean, k) => [mean + 2 * spreads[k]!, mean - 2 * spreads[k]!]);
  return [0, ...up.flat(), ...down.flat(), ...bars(meanUp, spreadUp), ...bars(meanDown, spreadDown)];
}

function bar(x: number, top: number, foot: number, colour = 'currentColor'): Markup {
  const pen = { colour, width: 1.25 };
  return markup`${line(x, top, x, foot, pen)}${line(x - CAP, top, x + CAP, top, pen)}${line(x - CAP, foot, x + CAP, foot, pen)}`;
}

/** A and E beside the frame as what they measure: from the lowest to the highest bar, and from the lowest to the highest mean. */
function spans({ figures }: PositioningTest, { frame, y }: Axes): Markup {
  const { meanUp, meanDown, spreadUp, spreadDown } = figures;
  const side = frame.left + frame.width;
  const ends = (times: number) =>
    rangeOf(
      ...[-1, 1].flatMap((sign) => [
        meanUp.map((mean, k) => mean + sign * times * spreadUp[k]!),
        meanDown.map((mean, k) => mean + sign * times * spreadDown[k]!),
      ]),
    );
  const foot = frame.top + frame.height;
  const span = (x: number, [low, high]: readonly [number, number], name: string) =>
    markup`${bar(x, y.at(high), y.at(low))}${textAt(x, foot + 17, name, 'middle')}`;
  return markup`${span(side + 16, ends(2), 'A')}${span(side + 36, ends(0), 'E')}`;
}

function figureText({ figures }: PositioningTest): string[] {
  return [
    `A ${ranged(figures.accuracy, 'µm')}`,
    `E ${ranged(figures.systematic, 'µm')}`,
    `R ${ranged(figures.repeatability, 'µm')}`,
    `B ${ranged(figures.reversal, 'µm')}`,
  ];
}

function summary({ state, figures }: PositioningTest): string {
  const { accuracy, systematic, repeatability, reversal } = figures;
  return (
    `Positioning ${state}: accuracy A ${ranged(accuracy, 'µm')}, systematic error E ${ranged(systematic, 'µm')}, ` +
    `repeatability R ${ranged(repeatability, 'µm')}, reversal error B ${ranged(reversal, 'µm')}.`
  );
}
