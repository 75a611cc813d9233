import { CAUTIONS } from '../ui/cautions.ts';
import { button, element } from '../ui/dom.ts';

export function createCautions(): HTMLDialogElement {
  const dialog = element(
    'dialog',
    { class: 'dialog cautions', 'aria-labelledby': 'cautions-title' },
    element('h2', { id: 'cautions-title' }, CAUTIONS.title),
    element('p', {}, CAUTIONS.opening),
    element(
      'dl',
      {},
      ...CAUTIONS.dangers.flatMap(([title, text]) => [element('dt', {}, title), element('dd', {}, text)]),
    ),
    element('p', {}, CAUTIONS.closing),
    button('Close', () => dialog.close()),
  );
  return dialog;
}
