import { button, element, setText } from '../ui/dom.ts';

/**
 * At the end of the panel: what the field in focus means. It takes the place of the caution, so that nothing moves while a slider is
 * dragged.
 */
export class PanelFoot {
  readonly element: HTMLElement;
  readonly #meaning = element('p', { hidden: true });
  readonly #caution: HTMLElement;

  constructor(onCautions: () => void) {
    this.#caution = element(
      'p',
      {},
      'A simulation shows tendencies; commissioning is for qualified people. ',
      button('Cautions', onCautions),
    );
    this.element = element('div', { class: 'panel-foot' }, this.#meaning, this.#caution);
  }

  /** Null: no field has the focus. */
  explain(meaning: string | null): void {
    this.#meaning.hidden = meaning === null;
    this.#caution.hidden = meaning !== null;
    setText(this.#meaning, meaning ?? '');
  }
}
