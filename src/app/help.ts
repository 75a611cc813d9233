import { button, element } from '../ui/dom.ts';
import { KEYS, OTHER_KEYS } from '../ui/keys.ts';

/** The list of all keys, made from the table that is obeyed. */
export function createHelp(): HTMLDialogElement {
  const dialog = element(
    'dialog',
    { class: 'dialog help', 'aria-labelledby': 'help-title' },
    element('h2', { id: 'help-title' }, 'Keys'),
    element(
      'dl',
      {},
      ...[...KEYS, ...OTHER_KEYS].flatMap(({ keys, label }) => [
        element('dt', {}, element('kbd', {}, keys)),
        element('dd', {}, label),
      ]),
    ),
    element(
      'p',
      {},
      'Take hold of the table on the stage and pull: a hand of spring and damper pulls the simulated axis. Turn the view with a drag beside it.',
    ),
    button('Close', () => dialog.close()),
  );
  return dialog;
}
