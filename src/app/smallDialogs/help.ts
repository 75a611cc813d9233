import { VERSION_TEXT } from '../../../shared/core/version.ts';
import { Dialog } from '../../ui/dialog.ts';
import { element } from '../../ui/dom.ts';
import { KEYS, OTHER_KEYS } from '../../ui/keys.ts';

/** Written in by the build from the packages themselves; `licences.txt`, beside the page, has the texts. */
declare const __LIBRARIES__: readonly {
  readonly name: string;
  readonly version: string;
  readonly licence: string;
}[];

/** The list of all keys, made from the table that is obeyed. */
export function createHelp(): Dialog {
  return new Dialog({ title: 'Keys', class: 'help' }).fill(
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
      'Drag the table on the stage to pull the simulated axis through a spring and a damper. Drag beside the table to turn the view.',
    ),
    element(
      'p',
      {},
      `Waybench ${VERSION_TEXT}, is under the MIT licence. It contains `,
      __LIBRARIES__.map(({ name, version, licence }) => `${name} ${version} (${licence})`).join(', '),
      '. ',
      element('a', { href: 'licences.txt', target: '_blank' }, 'Licences in full'),
    ),
  );
}
