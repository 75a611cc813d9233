import { loopFigureText } from '../../../shared/figures/loopFigures.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import { type Markup, markup } from '../../ui/markup.ts';
import {
  border,
  circle,
  clipped,
  curve,
  dot,
  drawing,
  type Frame,
  labelOnWhite,
  line,
  linearScale,
  textAt,
  upwardLabel,
} from './plot.ts';

const WIDTH = 680;
const HEIGHT = 390;
const FRAME: Frame = { left: 58, top: 8, width: 610, height: 340 };
/** What is shown of the plane; both axes have the same scale. */
const RE = [-3.1, 1.5] as const;
const PER_UNIT = FRAME.width / (RE[1] - RE[0]);
const HALF = FRAME.height / PER_UNIT / 2;

const re = linearScale(RE[0], RE[1], FRAME.left, FRAME.left + FRAME.width);
const im = linearScale(-HALF, HALF, FRAME.top + FRAME.height, FRAME.top);

/** The open loop near −1, with the unit circle and the circle it keeps clear of. */
export function nyquistPlot({ nyquistRe, nyquistIm, figures }: LoopAnalysis): Markup {
  const half = (sign: number, style: 'curve' | 'dashed') =>
    curve(
      nyquistRe.length,
      (k) => re.at(nyquistRe[k]!),
      (k) => im.at(sign * nyquistIm[k]!),
      style,
    );
  const { modulusMargin } = figures;
  const modulus = loopFigureText('modulusMargin', figures);
  return drawing(
    { width: WIDTH, height: HEIGHT },
    `Nyquist plot of the loop near −1. Modulus margin ${modulus}.`,
    markup`${[-3, -2, -1, 0, 1].map((value) => line(re.at(value), FRAME.top, re.at(value), FRAME.top + FRAME.height, 'grid'))}
${[-1, 0, 1].map((value) => line(FRAME.left, im.at(value), FRAME.left + FRAME.width, im.at(value), 'grid'))}
${[-3, -2, -1, 0, 1].map((value) => textAt(re.at(value), FRAME.top + FRAME.height + 18, number(value), 'middle'))}
${[-1, 0, 1].map((value) => textAt(FRAME.left - 6, im.at(value) + 5, number(value), 'end'))}
${circle(re.at(0), im.at(0), PER_UNIT, 'reference')}
${circle(re.at(-1), im.at(0), modulusMargin.value * PER_UNIT, 'reference')}
${clipped(FRAME, [half(-1, 'dashed'), half(1, 'curve')])}
${dot(re.at(-1), im.at(0))}
${labelOnWhite(re.at(-1) - 8, im.at(0) - 8, '−1', 'end')}
${labelOnWhite(FRAME.left + 10, FRAME.top + 22, `modulus margin ${modulus}: radius of the circle round −1`)}
${labelOnWhite(FRAME.left + 10, FRAME.top + 42, 'solid: positive frequencies')}
${border(FRAME)}
${textAt(FRAME.left + FRAME.width / 2, HEIGHT - 6, 'real part of L', 'middle')}
${upwardLabel(18, FRAME.top + FRAME.height / 2, 'imaginary part of L')}`,
  );
}

function number(value: number): string {
  return String(value).replace('-', '−');
}
