import type { Parameters } from '../../../shared/core/parameters/table.ts';
import { TRACE_LABELS, TRACE_QUANTITIES, type TraceQuantity } from '../../../shared/protocol/trace.ts';
import { element } from '../../ui/dom.ts';
import { figureTable } from '../../ui/figureTable.ts';
import { TRACE_UNITS, type TraceUnit } from './traceColumns.ts';
import { type ColumnUse, suggestMapping, type TraceMapping, type TraceScales } from './traceFile.ts';
import type { TraceTable } from './traceTable.ts';

export interface MappingForm {
  readonly element: HTMLElement;
  /** The mapping as it is chosen now. */
  mapping(): TraceMapping;
  scales(): TraceScales;
}

const NONE = -1;

/**
 * Which column holds what, in which unit: as the titles of the columns suggest, to be corrected by a person. `p`: the axis on the
 * bench, whose encoder count and continuous current are offered.
 */
export function createMappingForm(
  table: TraceTable,
  p: Parameters,
  onHeaderLine: (line: number) => void,
): MappingForm {
  const number = (label: string, value: number, step: string) =>
    element('input', { type: 'number', min: 0, step, value, 'aria-label': label });
  const header = number('Line of the header', table.headerLine ?? 1, '1');
  header.addEventListener('change', () => onHeaderLine(header.valueAsNumber));
  const count = number(
    'Length of one count in nm',
    Number((p.encoderResolution * 1e9).toPrecision(6)),
    'any',
  );
  const rated = number('Rated current in A peak', p.continuousCurrent, 'any');
  const suggested = suggestMapping(table);
  const rate = element('input', { type: 'number', min: 10, value: 8000, 'aria-label': 'Sample rate in Hz' });
  const rows = TRACE_QUANTITIES.map((quantity) => {
    const use = suggested[quantity];
    return createRow(quantity, table, use && 'column' in use ? use : null);
  });
  return {
    element: figureTable({
      class: 'dialog-table trace-mapping',
      rows: rows.map(({ row }) => row),
      foot: [
        { head: 'Without a time column: rate', cells: [element('td', {}, rate, ' Hz')] },
        { head: 'One count', cells: [element('td', {}, count, ' nm')] },
        { head: 'Rated current', cells: [element('td', {}, rated, ' A peak')] },
        { head: 'Header is line', cells: [element('td', {}, header)] },
      ],
    }),
    mapping() {
      const chosen: Partial<Record<TraceQuantity, ColumnUse>> = {};
      for (const { quantity, use } of rows) {
        const picked = use();
        if (picked) chosen[quantity] = picked;
      }
      return { ...chosen, time: chosen.time ?? { rate: rate.valueAsNumber } };
    },
    scales: () => ({ count: 1e-9 * count.valueAsNumber, ratedCurrent: rated.valueAsNumber }),
  };
}

/** In what a current may be recorded. */
const CURRENT_UNITS = {
  'A peak': { unit: 'A', rms: false },
  'A RMS': { unit: 'A', rms: true },
  'mA peak': { unit: 'mA', rms: false },
  'mA RMS': { unit: 'mA', rms: true },
  '% of rated': { unit: '% of rated', rms: false },
} as const satisfies Record<string, { unit: TraceUnit; rms: boolean }>;

function currentUnit(use: ColumnUse | null): string {
  const { unit = 'A', rms = false } = use ?? {};
  const fits = Object.entries(CURRENT_UNITS).find(([, each]) => each.unit === unit && each.rms === rms);
  return fits?.[0] ?? 'A peak';
}

function createRow(quantity: TraceQuantity, { columns }: TraceTable, suggested: ColumnUse | null) {
  const label = TRACE_LABELS[quantity];
  const column = element(
    'select',
    { 'aria-label': `Column of: ${label}` },
    element('option', { value: NONE }, 'not recorded'),
    ...columns.map(({ name }, k) =>
      element('option', { value: k, selected: suggested?.column === k }, name || `column ${k + 1}`),
    ),
  );
  const isCurrent = quantity === 'current' || quantity === 'currentCommand';
  const units = isCurrent ? Object.keys(CURRENT_UNITS) : TRACE_UNITS[quantity];
  const shown = isCurrent ? currentUnit(suggested) : (suggested?.unit ?? units[0]);
  const unit = element(
    'select',
    { 'aria-label': `Unit of: ${label}` },
    ...units.map((text) => element('option', { value: text, selected: text === shown }, text)),
  );
  return {
    quantity,
    row: { head: label, cells: [column, unit] },
    use(): ColumnUse | null {
      const index = Number(column.value);
      if (index === NONE) return null;
      return isCurrent
        ? { column: index, ...CURRENT_UNITS[unit.value as keyof typeof CURRENT_UNITS] }
        : { column: index, unit: unit.value as TraceUnit };
    },
  };
}
