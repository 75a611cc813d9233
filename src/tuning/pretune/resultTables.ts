import { inUnit, ranged } from '../../../shared/core/format.ts';
import { type Parameters, parameterRow } from '../../../shared/core/parameters/table.ts';
import { loadShares } from '../../../shared/figures/loadWarnings.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { parameterLabel, valueText } from '../../ui/fields/label.ts';
import { type FigureRow, figureTable } from '../../ui/figureTable.ts';
import { unbroken } from '../../ui/unbroken.ts';
import { judgedText, settlingText } from './pretuneText.ts';

/** A tuning under the head of its column; null where there is none. */
type TuningColumn = readonly [head: string, point: TuningPoint | null];

/** Tunings side by side: distance to instability, what they come to, and what they draw of what the axis `p` can give. */
export function comparisonTable(
  { figure }: Pick<PretuneResult, 'figure'>,
  p: Parameters,
  columns: readonly TuningColumn[],
  foot?: (index: number) => Node,
): HTMLElement {
  const row = (head: string, text: (point: TuningPoint) => string): FigureRow => ({
    head,
    cells: columns.map(([, point]) => (point ? text(point) : '—')),
  });
  const share = (point: TuningPoint, of: 'current' | 'force' | 'peak') =>
    `${inUnit(loadShares(p, point)[of], '%', 2)} of the limit`;
  const settles = figure === 'settling time';
  return figureTable({
    class: 'dialog-table',
    columns: ['', ...columns.map(([head]) => head)],
    rows: [
      row('Peak sensitivity', ({ peakSensitivity }) =>
        Number.isFinite(peakSensitivity) ? inUnit(peakSensitivity, '', 3) : 'unstable',
      ),
      row('Phase margin', ({ phaseMargin }) => (phaseMargin === null ? 'none' : inUnit(phaseMargin, '°', 3))),
      row('Gain margin, factor', ({ gainMargin }) =>
        gainMargin === null ? 'unlimited' : inUnit(gainMargin, '', 3),
      ),
      row('Crossover', ({ crossover }) => (crossover === null ? 'none' : ranged(crossover, 'Hz'))),
      ...(settles ? [row('Settling time', (point) => judgedText({ figure }, point))] : []),
      row('Following error, RMS', (point) => ranged(point.rmsError, 'm')),
      row('Following error, peak', (point) => ranged(point.peakError, 'm')),
      row('Current, RMS', (point) => `${ranged(point.rmsCurrent, 'A')}, ${share(point, 'current')}`),
      row('Current, peak', (point) => `${ranged(point.peakCurrent, 'A')}, ${share(point, 'peak')}`),
      row('Force, RMS', (point) => `${ranged(point.rmsForce, 'N')}, ${share(point, 'force')}`),
      ...(foot ? [{ head: '', cells: columns.map((_, k) => foot(k)) }] : []),
    ],
  });
}

/** Each value with the reason for it. */
export function choicesTable({ choices }: PretuneResult): HTMLElement {
  return table(
    ['Parameter', 'Value', 'Why', 'Rule'],
    choices.map(({ parameter, value, sentence, rule }) => [
      parameterLabel(parameter),
      valueText(parameterRow(parameter), value),
      unbroken(sentence),
      rule,
    ]),
  );
}

/** What becomes of the chosen tuning on machines that are not as the datasheet says. */
export function robustnessTable({ robustness, figure }: PretuneResult): HTMLElement {
  const settles = figure === 'settling time';
  return table(
    ['Machine', 'Peak sensitivity', ...(settles ? ['Settling time'] : []), 'Error, RMS', 'Current, RMS', ''],
    robustness.map(({ variation, peakSensitivity, settlingTime, rmsError, rmsCurrent, trip }) => [
      variation,
      Number.isFinite(peakSensitivity) ? inUnit(peakSensitivity, '', 3) : 'unstable',
      ...(settles ? [settlingText(settlingTime)] : []),
      ranged(rmsError, 'm'),
      ranged(rmsCurrent, 'A'),
      trip ? `trips: ${trip.kind}` : 'runs',
    ]),
  );
}

function table(columns: readonly string[], rows: readonly (readonly string[])[]): HTMLElement {
  return figureTable({
    class: 'dialog-table',
    columns,
    rows: rows.map(([head = '', ...cells]) => ({ head, cells })),
  });
}
