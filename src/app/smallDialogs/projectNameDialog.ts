import { checkText } from '../../../shared/core/checkText.ts';
import { sentenceText } from '../../../shared/core/sentence.ts';
import { BENCH_WORDING } from '../../bench/bench.ts';
import type { Store } from '../../bench/store.ts';
import { Dialog } from '../../ui/dialog.ts';
import { button, element, setText } from '../../ui/dom.ts';

const LONGEST = 80;

/** Gives what is on the bench a name of its own, which files, links and gain sheet carry. */
export class ProjectNameDialog {
  readonly #store: Store;
  readonly #name = element('input', { type: 'text', id: 'project-name', autocomplete: 'off' });
  readonly #problem = element('p', { class: 'field-problem', role: 'alert' });
  readonly #dialog = new Dialog({
    title: 'Name of the project',
    focus: 'control',
    buttons: [button('Use this name', () => this.#use(), { class: 'primary' })],
  });

  constructor(store: Store) {
    this.#store = store;
    this.#name.addEventListener('keydown', ({ key }) => {
      if (key === 'Enter') this.#use();
    });
    this.#dialog.fill(
      element('p', {}, 'Files, links and the gain sheet carry this name.'),
      element('p', {}, element('label', { for: this.#name.id }, 'Name '), this.#name),
      this.#problem,
    );
  }

  open(): void {
    this.#name.value = this.#store.bench.origin.title;
    setText(this.#problem, '');
    this.#dialog.open();
    this.#name.select();
  }

  #use(): void {
    const checked = checkText(this.#name.value.trim(), LONGEST, { mayBeEmpty: false });
    if ('wrong' in checked) {
      setText(this.#problem, sentenceText(checked.wrong, BENCH_WORDING));
      return;
    }
    const { bench } = this.#store;
    if (checked.legal !== bench.origin.title)
      this.#store.replace(
        { ...bench, origin: { ...bench.origin, id: null, title: checked.legal } },
        `project named “${checked.legal}”`,
      );
    this.#dialog.close();
  }
}
