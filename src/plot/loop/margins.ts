import { decibels } from '../../../shared/core/decibels.ts';
import { inUnit } from '../../../shared/core/format.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import { footOf } from '../frame.ts';
import { placeOn, straight } from '../interpolate.ts';
import { label, line, type Mark, point } from '../marks.ts';
import type { Pen } from '../pens.ts';
import type { Graph } from './graph.ts';
import { degrees } from './responses.ts';

const BAR: Pen = { colour: 'accent', width: 3 };

/** A bar from the curve to 0 dB where the phase passes −180°. An unstable loop has no margins. */
export function gainMarginMarks({ x, y }: Graph, { figures }: LoopAnalysis, textSize: number): Mark[] {
  const { gainMargin, stable } = figures;
  if (!gainMargin || !stable) return [];
  const place = x.at(gainMargin.frequency);
  const margin = decibels(gainMargin.value);
  return [
    line(place, y.at(0), place, y.at(-margin), BAR),
    label(place, y.at(0) - 0.7 * textSize, `${inUnit(margin, '', 2)} dB`, {
      align: 'middle',
      colour: 'accent',
      halo: true,
    }),
  ];
}

/** A bar from −180° to the curve where |L| = 1. The curve may run on another turn of the circle. */
export function phaseMarginMarks({ x, y }: Graph, { figures, frequency, openLoop }: LoopAnalysis): Mark[] {
  const { phaseMargin, stable } = figures;
  if (!phaseMargin || !stable) return [];
  const place = x.at(phaseMargin.frequency);
  const phase = degrees(straight(openLoop.phase, placeOn(frequency, phaseMargin.frequency)));
  const [from, to] = [y.at(phase - degrees(phaseMargin.value)), y.at(phase)];
  return [
    line(place, from, place, to, BAR),
    label(place + 6, (from + to) / 2, inUnit(phaseMargin.value, '°', 2), { colour: 'accent', halo: true }),
  ];
}

/** A line down from where |L| = 1 to the phase margin, for a sheet that has no handle there. */
export function crossoverMarks(magnitude: Graph, phase: Graph, { figures }: LoopAnalysis): Mark[] {
  const { phaseMargin } = figures;
  if (!phaseMargin) return [];
  const place = magnitude.x.at(phaseMargin.frequency);
  const zero = magnitude.y.at(0);
  return [line(place, zero, place, footOf(phase.frame), { dash: 'dotted' }), point(place, zero, 'dot', 3.5)];
}
