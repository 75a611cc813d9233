import { fixed } from '../../shared/core/format.ts';
import { element, setText } from '../ui/dom.ts';

/** How far the hand goes to either side, and its steps, m. */
const REACH = 0.02;
const STEP = 0.0005;

/** A hand that pulls all tables alike: held as far from where each was taken hold of as the slider says; it lets go when it is let go of. */
export function commonHand(pull: (offset: number | null) => void): HTMLElement {
  const output = element('output', { 'aria-live': 'off' });
  const show = (offset: number | null) =>
    setText(output, offset === null ? 'let go' : fixed(offset, 'mm', 1));
  const slider = element('input', {
    type: 'range',
    min: -REACH,
    max: REACH,
    step: STEP,
    value: 0,
    'aria-label': 'Hand that pulls both tables',
    oninput: () => {
      pull(slider.valueAsNumber);
      show(slider.valueAsNumber);
    },
    onpointerup: letGo,
    onpointercancel: letGo,
    onblur: letGo,
  });
  function letGo(): void {
    slider.value = '0';
    pull(null);
    show(null);
  }
  show(null);
  return element('div', { class: 'common-hand' }, element('span', {}, 'Hand'), slider, output);
}
