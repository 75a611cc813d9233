import { valueAt } from '../../../shared/core/at.ts';
import { decibels } from '../../../shared/core/decibels.ts';
import type { LoopAnalysis, Response } from '../../../shared/protocol/analysis.ts';

const DEGREE = Math.PI / 180;

/** The frequency responses of a loop as lines of a table: Hz, dB and degrees; the stiffness in N/m. */
export function responseRows(analysis: LoopAnalysis): string[][] {
  const responses: readonly [name: string, response: Response][] = [
    ['L', analysis.openLoop],
    ['S', analysis.sensitivity],
    ['T', analysis.closedLoop],
    ['tracking', analysis.tracking],
  ];
  const head = [
    'frequency [Hz]',
    ...responses.flatMap(([name]) => [`${name} [dB]`, `${name} [deg]`]),
    'stiffness [N/m]',
  ];
  const rows = Array.from(analysis.frequency, (frequency, k) => [
    frequency,
    ...responses.flatMap(([, { magnitude, phase }]) => [
      decibels(valueAt(magnitude, k)),
      valueAt(phase, k) / DEGREE,
    ]),
    valueAt(analysis.stiffness.magnitude, k),
  ]);
  return [head, ...rows.map((row) => row.map(String))];
}
