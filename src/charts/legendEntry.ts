import { CHANNELS } from '../../shared/core/channels.ts';
import { lineSample } from '../plot/lineSample.ts';
import type { Trace } from '../plot/strip/trace.ts';
import { element, setText } from '../ui/dom.ts';

/** Name, line sample and value of one line; pressing it shows or hides the line. */
export class LegendEntry {
  readonly item: HTMLLIElement;
  readonly #button: HTMLButtonElement;
  readonly #value = element('span', { class: 'charts-value' });

  constructor(trace: Trace, onToggle: (shown: boolean) => void) {
    const { label } = CHANNELS[trace.channel];
    const { quantity: colour, dash, width } = trace;
    this.#button = element(
      'button',
      {
        type: 'button',
        'aria-pressed': 'true',
        title: `${label}: show or hide`,
        onclick: () => onToggle(this.#toggle()),
      },
      lineSample({ colour, dash, width }),
      element('span', { class: 'charts-name' }, trace.name),
      this.#value,
    );
    this.item = element('li', {}, this.#button);
  }

  setValue(text: string): void {
    setText(this.#value, text);
  }

  #toggle(): boolean {
    const shown = this.#button.getAttribute('aria-pressed') !== 'true';
    this.#button.setAttribute('aria-pressed', String(shown));
    return shown;
  }
}
