import { Dialog } from '../../ui/dialog.ts';
import { button, element } from '../../ui/dom.ts';
import type { Keeper } from './keeper.ts';
import { whenText } from './whenText.ts';
import { workText } from './work.ts';
import { type EarlierWork, earlierWork, forgetWork, keepWork } from './workTable.ts';

/** All that this browser keeps of earlier work, to go on with or to delete. */
export class EarlierWorkDialog {
  readonly #keeper: Keeper;
  readonly #list = element('ul', { class: 'snapshots' });
  readonly #deleted = element('div', { 'aria-live': 'polite' });
  readonly #dialog = new Dialog({ title: 'Earlier work', class: 'wide' }).fill(
    element(
      'p',
      {},
      'Bench, study and undo steps of earlier pages, kept in this browser; the oldest are dropped first. What is on the page now is kept too when you open one of them.',
    ),
    this.#list,
    this.#deleted,
  );

  constructor(keeper: Keeper) {
    this.#keeper = keeper;
  }

  async open(): Promise<void> {
    this.#deleted.replaceChildren();
    await this.#show();
    this.#dialog.open();
  }

  async #show(): Promise<void> {
    const { page } = this.#keeper;
    const others = (await earlierWork().catch(() => [])).filter((each) => each.page !== page);
    this.#list.replaceChildren(...others.map((each) => this.#entry(each)));
    if (others.length === 0) this.#list.append(element('li', {}, 'No earlier work is kept.'));
  }

  #entry(each: EarlierWork): HTMLLIElement {
    const { work, isOpen } = each;
    const text = `${workText(work)}, ${whenText(work.kept)}`;
    const action = (label: string, onclick: () => void) =>
      button(label, onclick, { 'aria-label': `${label} ${text}` });
    const open = () => {
      this.#dialog.close();
      void this.#keeper.goOnWith(each);
    };
    const actions = [action('Open', open), action('Delete', () => void this.#delete(each, text))];
    return element(
      'li',
      {},
      element('span', { class: 'snapshot-name' }, text),
      ...(isOpen ? [element('span', {}, 'Open in another tab')] : actions),
    );
  }

  async #delete({ page, work }: EarlierWork, text: string): Promise<void> {
    await forgetWork(page);
    await this.#show();
    const restore = async () => {
      await keepWork(page, work);
      this.#deleted.replaceChildren();
      await this.#show();
      this.#dialog.heading.focus();
    };
    const back = button('Restore it', () => void restore());
    this.#deleted.replaceChildren(element('p', {}, `Deleted ${text}. `, back));
    back.focus();
  }
}
