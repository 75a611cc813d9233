import { changedSinceLearned, tablePeak } from '../../shared/core/coggingTable.ts';
import { ranged } from '../../shared/core/format.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { button, element, setHidden, setText } from '../ui/dom.ts';
import { coggingCurve } from './coggingCurve.ts';

export interface CoggingActions {
  /** Scans a copy of the machine and puts the table that it gives on the bench. */
  learnCogging(): void;
  removeCogging(): void;
  saveCogging(): void;
}

/** What the cogging table of the bench is, its curve, and ways to learn, save and remove it. */
export class CoggingNote {
  readonly element: HTMLElement;
  readonly #text = element('p');
  readonly #curve = element('div', { class: 'cogging-curve' });
  readonly #ofTable = element('div', { class: 'cogging-table-actions' });
  #shown: Scene['coggingTable'];

  constructor({ learnCogging, removeCogging, saveCogging }: CoggingActions) {
    this.#ofTable.append(
      button('Save cogging table (CSV)', saveCogging, { class: 'panel-wide' }),
      button('Remove cogging table', removeCogging, { class: 'panel-wide' }),
    );
    this.element = element(
      'section',
      { class: 'shaping-note', 'aria-label': 'Cogging table' },
      this.#text,
      this.#curve,
      button('Learn cogging table', learnCogging, {
        class: 'panel-wide',
        title:
          'Scans a copy of the axis slowly in both directions, and works out the force over position from its current',
      }),
      this.#ofTable,
    );
  }

  show(scene: Pick<Scene, 'coggingTable' | 'parameters'>): void {
    const { coggingTable: table } = scene;
    setText(this.#text, coggingText(scene));
    for (const part of [this.#ofTable, this.#curve]) setHidden(part, !table);
    if (table && table !== this.#shown) this.#curve.innerHTML = coggingCurve(table);
    this.#shown = table;
  }
}

/** '2102 forces from −263 mm to 263 mm, every 0.250 mm, peak 18.9 N. Learned in a scan at 60.0 mm/s.' */
export function coggingText({
  coggingTable: table,
  parameters,
}: Pick<Scene, 'coggingTable' | 'parameters'>): string {
  if (!table) return 'No cogging table has been learned.';
  const { from, spacing, scanSpeed, forces } = table;
  const to = from + (forces.length - 1) * spacing;
  const stale =
    changedSinceLearned(table, parameters).length === 0
      ? ''
      : ' The motor or its field has changed since: learn the table again.';
  return `${forces.length} forces from ${ranged(from, 'm')} to ${ranged(to, 'm')}, every ${ranged(spacing, 'm')}, peak ${ranged(tablePeak(table), 'N')}. Learned in a scan at ${ranged(scanSpeed, 'm/s')} in both directions.${stale}`;
}
