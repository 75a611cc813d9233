import { at } from '../../../shared/core/at.ts';
import { loopFigureText } from '../../../shared/figures/loopFigures.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import { type Drawing, drawing } from '../drawing.ts';
import { type Frame, footOf } from '../frame.ts';
import { border, label, type Mark, TEXT_SIZE } from '../marks.ts';
import { BodeChart } from './bode.ts';
import { FrequencyAxis } from './frequencyAxis.ts';
import { frequencyLabels } from './graph.ts';
import { loopAlone } from './loopData.ts';
import { crossoverMarks } from './margins.ts';

const SIZE = { width: 680, height: 500 };
const [LEFT, WIDTH] = [58, 610];
const FRAMES = {
  magnitude: { left: LEFT, top: 8, width: WIDTH, height: 165 },
  phase: { left: LEFT, top: 185, width: WIDTH, height: 140 },
  closed: { left: LEFT, top: 337, width: WIDTH, height: 135 },
} as const satisfies Record<string, Frame>;

/**
 * Open loop in magnitude and phase with its margins, and sensitivity and closed loop, over one
 * frequency axis.
 */
export function bodeSheet(analysis: LoopAnalysis): Drawing {
  const { frequency, figures } = analysis;
  const axis = new FrequencyAxis();
  axis.setRange(at(frequency, 0), at(frequency, frequency.length - 1));
  const [open, closed] = [new BodeChart('open', axis), new BodeChart('closed', axis)];
  open.magnitude.frame = FRAMES.magnitude;
  open.phase.frame = FRAMES.phase;
  closed.magnitude.frame = FRAMES.closed;
  const data = loopAlone(analysis);
  for (const chart of [open, closed]) chart.fit(data, TEXT_SIZE);
  const [phaseMargin, gainMargin] = [
    loopFigureText('phaseMargin', figures),
    loopFigureText('gainMargin', figures),
  ];
  return drawing(
    SIZE,
    `Frequency response of the loop. Phase margin ${phaseMargin}, gain margin ${gainMargin}.`,
    [
      ...open.magnitudeMarks(data, TEXT_SIZE),
      ...open.phaseMarks(data, TEXT_SIZE),
      ...closed.magnitudeMarks(data, TEXT_SIZE),
      ...crossoverMarks(open.magnitude, open.phase, analysis),
      ...frequencyLabels(closed.magnitude, TEXT_SIZE),
      ...Object.values(FRAMES).map((frame) => border(frame, { colour: 'ink' })),
      caption(FRAMES.magnitude, `|L|; bar: gain margin ${gainMargin}`),
      caption(FRAMES.phase, `phase of L; bar: phase margin ${phaseMargin}`),
      caption(FRAMES.closed, '|S| dashed, |T| solid'),
    ],
  );
}

/** In the lower left corner, where the curves of a loop rarely come. */
function caption(frame: Frame, text: string): Mark {
  return label(frame.left + 8, footOf(frame) - 14, text, { halo: true });
}
