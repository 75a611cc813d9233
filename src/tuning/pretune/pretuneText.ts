import { inUnit, ranged } from '../../../shared/core/format.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';

/** The figure that a result is judged by, of a point: seconds or metres; null where a move did not settle. */
export function judgedFigure({ figure }: PretuneResult, point: TuningPoint): number | null {
  return figure === 'settling time' ? point.settlingTime : point.rmsError;
}

export function judgedText(result: PretuneResult, point: TuningPoint): string {
  if (point.trip) return 'tripped';
  const value = judgedFigure(result, point);
  if (value === null) return 'not settled';
  if (result.figure !== 'settling time') return ranged(value, 'm');
  return value === 0 ? 'at once' : ranged(value, 's');
}

/** A point in one line: what a screen reader says and a tooltip shows. */
export function pointText(result: PretuneResult, point: TuningPoint): string {
  return [
    point.label,
    `peak sensitivity ${inUnit(point.peakSensitivity, '', 3)}`,
    `${result.figure} ${judgedText(result, point)}`,
    `rms error ${ranged(point.rmsError, 'm')}`,
    `rms current ${ranged(point.rmsCurrent, 'A')}`,
  ].join(', ');
}
