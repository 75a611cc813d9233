import type { ParameterName } from '../../../shared/core/parameters/table.ts';
import type { PretuneResult } from '../../../shared/protocol/pretune.ts';

const DEGREE = Math.PI / 180;

/** Every tuning that pretuning tried, one to a line, SI; then its gains, under the names of the parameters. */
export function pretuneRows({ points, best, textbook }: PretuneResult): string[][] {
  const all = [...new Set([best, ...(textbook ? [textbook] : []), ...points])];
  const names = [...new Set(all.flatMap(({ changes }) => Object.keys(changes) as ParameterName[]))];
  const head = [
    'tuning',
    'found by',
    'peak sensitivity',
    'phase margin [deg]',
    'gain margin',
    'crossover [Hz]',
    'settling time [s]',
    'following error RMS [m]',
    'following error peak [m]',
    'current RMS [A peak value]',
    'current peak [A]',
    'force RMS [N]',
    'trip',
    ...names,
  ];
  const text = (value: unknown) => (value === null || value === undefined ? '' : String(value));
  return [
    head,
    ...all.map((point) =>
      [
        point === best ? 'recommended' : point.origin,
        point.label,
        point.peakSensitivity,
        point.phaseMargin === null ? null : point.phaseMargin / DEGREE,
        point.gainMargin,
        point.crossover,
        point.settlingTime,
        point.rmsError,
        point.peakError,
        point.rmsCurrent,
        point.peakCurrent,
        point.rmsForce,
        point.trip?.kind,
        ...names.map((name) => point.changes[name]),
      ].map(text),
    ),
  ];
}

/** The same as JSON, with the reasons and the runs on other machines. */
export function pretuneJson({ courses: _, ...result }: PretuneResult): string {
  return `${JSON.stringify({ waybench: 'pretuning', units: 'SI, rad', ...result }, null, 1)}\n`;
}
