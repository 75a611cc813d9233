import { button, element, setText } from '../../ui/dom.ts';

interface RecordBarOptions {
  keep(): void;
  cancel(): void;
}

/** Says above the stage that a step is being recorded, and ends it. */
export class RecordBar {
  readonly element: HTMLElement;
  readonly #text = element('p', {});
  readonly #keep: HTMLButtonElement;

  constructor({ keep, cancel }: RecordBarOptions) {
    this.#keep = button('Keep this step', keep, { class: 'primary' });
    this.element = element(
      'div',
      { class: 'lesson-recording', role: 'status' },
      this.#text,
      this.#keep,
      button('Discard', cancel),
    );
    this.element.hidden = true;
  }

  show(step: number): void {
    setText(this.#text, `Recording step ${step}: run, change and pull what belongs to it.`);
    this.element.hidden = false;
    this.#keep.focus();
  }

  hide(): void {
    this.element.hidden = true;
  }
}
