import { inUnit, ranged } from '../../../shared/core/format.ts';
import { parameterRow } from '../../../shared/core/parameters/table.ts';
import type { PretuneResult, TuningPoint } from '../../../shared/protocol/pretune.ts';
import { parameterLabel, valueText } from '../../ui/fields/label.ts';
import { figureTable } from '../../ui/figureTable.ts';
import { judgedText } from './pretuneText.ts';

/** The chosen tuning beside the textbook's at the same peak sensitivity. */
export function comparisonTable(result: PretuneResult): HTMLElement {
  const columns: [string, TuningPoint | null][] = [
    ['textbook', result.textbook],
    ['pretuned', result.best],
  ];
  const row = (label: string, text: (point: TuningPoint) => string) => [
    label,
    ...columns.map(([, point]) => (point ? text(point) : '—')),
  ];
  return table(
    ['', ...columns.map(([name]) => name)],
    [
      row('Peak sensitivity', (point) => inUnit(point.peakSensitivity, '', 3)),
      row('Crossover', ({ crossover }) => (crossover === null ? '—' : ranged(crossover, 'Hz'))),
      row(result.figure === 'settling time' ? 'Settling time' : 'Following error, rms', (point) =>
        judgedText(result, point),
      ),
      row('Following error, rms', (point) => ranged(point.rmsError, 'm')),
      row('Current, rms', (point) => ranged(point.rmsCurrent, 'A')),
    ].filter(([label], i, rows) => rows.findIndex(([other]) => other === label) === i),
  );
}

/** Each value with the reason for it. */
export function choicesTable({ choices }: PretuneResult): HTMLElement {
  return table(
    ['Parameter', 'Value', 'Why', 'Rule'],
    choices.map(({ parameter, value, sentence, rule }) => [
      parameterLabel(parameter),
      valueText(parameterRow(parameter), value),
      sentence,
      rule,
    ]),
  );
}

/** What becomes of the chosen tuning on machines that are not as the datasheet says. */
export function robustnessTable({ robustness, figure }: PretuneResult): HTMLElement {
  return table(
    ['Machine', 'Peak sensitivity', figure === 'settling time' ? 'Settling' : '', 'Error, rms', ''],
    robustness.map(({ variation, peakSensitivity, settlingTime, rmsError, trip }) => [
      variation,
      Number.isFinite(peakSensitivity) ? inUnit(peakSensitivity, '', 3) : 'unstable',
      figure !== 'settling time'
        ? ''
        : settlingTime === null
          ? 'not settled'
          : settlingTime === 0
            ? 'at once'
            : ranged(settlingTime, 's'),
      ranged(rmsError, 'm'),
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
