import { CAUTIONS } from '../ui/cautions.ts';
import { Dialog } from '../ui/dialog.ts';
import { element } from '../ui/dom.ts';

export function createCautions(): Dialog {
  return new Dialog({ title: CAUTIONS.title, class: 'cautions' }).fill(
    element('p', {}, CAUTIONS.opening),
    element(
      'dl',
      {},
      ...CAUTIONS.dangers.flatMap(([title, text]) => [element('dt', {}, title), element('dd', {}, text)]),
    ),
    element('p', {}, CAUTIONS.closing),
  );
}
