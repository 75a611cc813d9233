import { CAUTIONS } from '../../shared/cautions.ts';
import { button, element } from './dom.ts';

export function createCautions(): HTMLDialogElement {
  const dialog = element(
    'dialog',
    { class: 'dialog cautions', 'aria-labelledby': 'cautions-title' },
    element('h2', { id: 'cautions-title' }, CAUTIONS.title),
    element('p', {}, CAUTIONS.opening),
    element(
      'dl',
      {},
      ...CAUTIONS.dangers.flatMap(([title, words]) => [element('dt', {}, title), element('dd', {}, words)]),
    ),
    element('p', {}, CAUTIONS.closing),
    button('Close', () => dialog.close()),
  );
  return dialog;
}
