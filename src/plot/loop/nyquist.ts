import { valueAt } from '../../../shared/core/at.ts';
import { loopFigureText } from '../../../shared/figures/loopFigures.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import { type Drawing, drawing } from '../drawing.ts';
import { inside } from '../inside.ts';
import { placeOn, straight } from '../interpolate.ts';
import { border, circle, curve, label, type Mark, point, TEXT_SIZE } from '../marks.ts';
import type { Pen } from '../pens.ts';
import { FAINT, type LoopChartData, loopAlone, STALE } from './loopData.ts';
import { Plane, planeGround, planeLabels } from './plane.ts';

const SIZE = { width: 680, height: 390 };

/** The open loop near −1, for a sheet of paper. */
export function nyquistSheet(analysis: LoopAnalysis): Drawing {
  const plane = new Plane({ re: -0.8, im: 0, half: 1.28 }, [1.28, 1.28]);
  plane.frame = { left: 72, top: 8, width: 596, height: 340 };
  const { frame } = plane;
  const modulus = loopFigureText('modulusMargin', analysis.figures);
  return drawing(SIZE, `Nyquist plot of the loop near −1. Modulus margin ${modulus}.`, [
    ...nyquistMarks(plane, loopAlone(analysis), TEXT_SIZE, [
      `modulus margin ${modulus}: radius of the circle around −1`,
      'solid: positive frequencies',
    ]),
    border(frame, { colour: 'ink' }),
    label(frame.left + frame.width / 2, SIZE.height - 11, 'real part of L', { align: 'middle' }),
    label(11, frame.top + frame.height / 2, 'imaginary part of L', { align: 'middle', upward: true }),
  ]);
}

/**
 * The open loop, the unit circle, and round −1 the circle that the loop keeps clear of; captions in
 * the upper left corner.
 */
export function nyquistMarks(
  plane: Plane,
  data: LoopChartData,
  textSize: number,
  captions: readonly string[],
): Mark[] {
  const { analysis, pinned } = data;
  const { frame, x, y, unit } = plane;
  const { modulusMargin, stable } = analysis.figures;
  const [re, im] = [x.at(-1), y.at(0)];
  const radius = modulusMargin.value * unit;
  return [
    ...planeGround(plane, textSize),
    ...inside(
      frame,
      [
        circle(x.at(0), y.at(0), unit, { pen: { colour: 'strong', dash: 'dotted' } }),
        circle(re, im, radius, { fill: { colour: 'error', opacity: 0.13 }, pen: { colour: 'error' } }),
        ...(pinned ? [locus(plane, pinned, 1, { width: 1.25, opacity: FAINT })] : []),
        locus(plane, analysis, -1, { dash: 'dashed', opacity: 0.5 }),
        locus(plane, analysis, 1, { width: 2 }),
        ...measuredMarks(plane, data),
        circle(re, im, 4, { fill: { colour: stable ? 'ink' : 'alarm' } }),
        label(re - 7, im - textSize * 0.7, '−1', {
          align: 'end',
          colour: stable ? 'ink' : 'alarm',
          halo: true,
        }),
        ...cursorMarks(plane, data),
      ],
      textSize,
    ),
    ...captions.map((text, k) =>
      label(frame.left + 5, frame.top + textSize * (0.8 + 1.4 * k), text, { colour: 'error', halo: true }),
    ),
    ...planeLabels(plane, textSize),
  ];
}

/** L over positive frequencies, or its mirror image over negative ones. */
function locus(plane: Plane, { nyquistRe, nyquistIm }: LoopAnalysis, sign: 1 | -1, pen: Pen): Mark {
  const im = sign === 1 ? nyquistIm : nyquistIm.map((value) => -value);
  return curve(nyquistRe, im, plane, pen);
}

function measuredMarks({ x, y }: Plane, { measured, isStale }: LoopChartData): Mark[] {
  if (!measured) return [];
  const { magnitude, phase } = measured.openLoop;
  const pen = { width: 1.5, opacity: isStale ? STALE : 1 };
  return Array.from(magnitude, (value, k) => {
    const angle = valueAt(phase, k);
    return point(x.at(value * Math.cos(angle)), y.at(value * Math.sin(angle)), 'ring', 2.5, pen);
  });
}

function cursorMarks({ x, y }: Plane, { analysis, cursor }: LoopChartData): Mark[] {
  if (cursor === null) return [];
  const place = placeOn(analysis.frequency, cursor);
  const [re, im] = [straight(analysis.nyquistRe, place), straight(analysis.nyquistIm, place)];
  return [point(x.at(re), y.at(im), 'ring', 4, { width: 1.5 })];
}
