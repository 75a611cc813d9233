import { inUnit } from '../../../shared/core/format.ts';
import { COMPARABLE, SCALED_BY } from '../../../shared/sizing/comparable.ts';
import type { ConstantRatios } from '../../../shared/sizing/comparableNote.ts';
import { element } from '../../ui/dom.ts';

/** How motor constants compare when the motors are made equal in one thing or another; nothing without a pair of linear motors. */
export function constantsTable(ratios: readonly ConstantRatios[]): HTMLElement[] {
  if (ratios.length === 0) return [];
  const cell = (ratio: number) =>
    element('td', { class: ratio > 1 ? 'is-larger' : '' }, `${inUnit(ratio, '', 2)} times`);
  return [
    element(
      'p',
      {},
      'What is held equal decides which motor looks better: its motor constant squared, force² per watt of copper loss, over that of another.',
    ),
    element(
      'table',
      { class: 'constants' },
      element(
        'thead',
        {},
        element(
          'tr',
          {},
          element('th', { scope: 'col' }, 'Motor constant squared'),
          ...SCALED_BY.map((by) => element('th', { scope: 'col' }, `at equal ${COMPARABLE[by].label}`)),
        ),
      ),
      element(
        'tbody',
        {},
        ...ratios.map(({ letter, against, ratios: each }) =>
          element('tr', {}, element('th', { scope: 'row' }, `${letter} over ${against}`), ...each.map(cell)),
        ),
      ),
    ),
  ];
}
