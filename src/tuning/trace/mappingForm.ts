import type { Unit } from '../../../shared/core/units.ts';
import { TRACE_LABELS, TRACE_QUANTITIES, type TraceQuantity } from '../../../shared/protocol/trace.ts';
import { element } from '../../ui/dom.ts';
import { figureTable } from '../../ui/figureTable.ts';
import { TRACE_UNITS } from './traceColumns.ts';
import { type ColumnUse, suggestMapping, type TraceMapping } from './traceFile.ts';
import type { TraceTable } from './traceTable.ts';

export interface MappingForm {
  readonly element: HTMLElement;
  /** The mapping as it is chosen now. */
  mapping(): TraceMapping;
}

const NONE = -1;

/** Which column holds what, in which unit: as the titles of the columns suggest, to be corrected by a person. */
export function createMappingForm(table: TraceTable): MappingForm {
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
      foot: [{ head: 'Without a time column: rate', cells: [element('td', {}, rate, ' Hz')] }],
    }),
    mapping() {
      const chosen: Partial<Record<TraceQuantity, ColumnUse>> = {};
      for (const { quantity, use } of rows) {
        const picked = use();
        if (picked) chosen[quantity] = picked;
      }
      return { ...chosen, time: chosen.time ?? { rate: rate.valueAsNumber } };
    },
  };
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
  const units = isCurrent ? ['A, amplitude', 'A, rms'] : TRACE_UNITS[quantity];
  const shown = isCurrent && suggested?.rms ? 'A, rms' : (suggested?.unit ?? units[0]);
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
        ? { column: index, unit: 'A', rms: unit.value === 'A, rms' }
        : { column: index, unit: unit.value as Unit };
    },
  };
}
