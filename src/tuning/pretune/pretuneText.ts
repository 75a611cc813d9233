import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';

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
