import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { ForeseenTuning, PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { sentence } from '../../../shared/verdict/text.ts';

type Judged = Pick<PretuneResult, 'figure'>;

/** The figure that a result is judged by, of a point: seconds or metres; null where a move did not settle. */
export function judgedFigure({ figure }: Judged, point: TuningPoint): number | null {
  return figure === 'settling time' ? point.settlingTime : point.rmsError;
}

/** A settling time, s; null where a move did not settle. */
export function settlingText(time: number | null): string {
  if (time === null) return 'not settled';
  return time === 0 ? 'at once' : ranged(time, 's');
}

export function judgedText(result: Judged, point: TuningPoint): string {
  if (point.trip) return 'tripped';
  return result.figure === 'settling time' ? settlingText(point.settlingTime) : ranged(point.rmsError, 'm');
}

/** A point in one line: what a screen reader says and a tooltip shows. */
export function pointText(result: Judged, point: TuningPoint): string {
  return [
    point.label,
    `peak sensitivity ${inUnit(point.peakSensitivity, '', 3)}`,
    `${result.figure} ${judgedText(result, point)}`,
    `RMS error ${ranged(point.rmsError, 'm')}`,
    `RMS current ${ranged(point.rmsCurrent, 'A')}`,
  ].join(', ');
}

/** A lower peak sensitivity than the recommended one by less than this is no more robust to speak of. */
const AS_ROBUST = 0.05;

/** Whether a more robust tuning settles at once as well, and what the recommended one has over it; empty where none does. */
export function tradeOffText({
  best,
  figure,
  points,
}: Pick<PretuneResult, 'best' | 'figure' | 'points'>): string {
  if (figure !== 'settling time' || best.settlingTime !== 0) return '';
  const [robust] = points
    .filter(({ origin, settlingTime, trip }) => origin === 'pretuned' && settlingTime === 0 && !trip)
    .sort((a, b) => a.peakSensitivity - b.peakSensitivity);
  if (!robust || robust.peakSensitivity > best.peakSensitivity - AS_ROBUST) return '';
  const at = ({ peakSensitivity }: TuningPoint) => inUnit(peakSensitivity, '', 3);
  return `The moves already settle at once at a peak sensitivity of ${at(robust)}, with an RMS error of ${ranged(robust.rmsError, 'm')}; the recommended tuning has ${ranged(best.rmsError, 'm')} at ${at(best)}. Where only the window counts, the lower one does as well, and is further from instability.`;
}

/** What the linear analysis says of a tuning that has not run. */
export function foreseenText({
  label,
  crossover,
  phaseMargin,
  gainMargin,
  peakSensitivity,
  decay,
  friction,
}: ForeseenTuning): string {
  const figures = [
    label,
    ...(crossover === null ? [] : [`crossover ${inUnit(crossover, 'Hz', 3)}`]),
    ...(phaseMargin === null ? [] : [`phase margin ${inUnit(phaseMargin, '°', 2)}`]),
    ...(gainMargin === null ? [] : [`gain margin ${inUnit(gainMargin, '', 3)}`]),
    `peak sensitivity ${inUnit(peakSensitivity, '', 3)}`,
  ];
  const disturbed =
    friction === null
      ? ''
      : ` A force of the size of its dry friction, ${ranged(friction.force, 'N')}, moves it by ${ranged(friction.error, 'm')} at most, at any frequency.`;
  const decays =
    decay === null ? '' : ` The remaining error decays with a time constant of ${ranged(decay, 's')}.`;
  return `${sentence(figures.join(', '))}${disturbed}${decays} Settling follows from the first run.`;
}
