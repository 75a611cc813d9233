import type { Scene } from '../../../shared/core/scene.ts';
import { button, element, setText } from '../../ui/dom.ts';
import { wearText } from './wearText.ts';

/** What the kilometres mean in years and have done to nut and guide, and a way to test both machines. */
export class WearNote {
  readonly element: HTMLElement;
  readonly #text = element('p');

  constructor(wearTest: () => void) {
    this.element = element(
      'section',
      { class: 'shaping-note', 'aria-label': 'What the kilometres did' },
      this.#text,
      button('Positioning, new and now …', wearTest, {
        class: 'panel-wide',
        title: 'Positioning test to ISO 230-2 on the new machine and on the worn one, side by side',
      }),
    );
  }

  show(scene: Scene): void {
    setText(this.#text, wearText(scene));
  }
}
