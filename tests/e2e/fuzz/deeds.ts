import type { Page } from 'playwright-core';
import { at } from '../../../shared/core/at.ts';
import { KEYS } from '../../../src/ui/keys.ts';

/** What a person may do at random: a key, a press somewhere on the page, a control, a text into a field. */
export interface Deed {
  readonly text: string;
  act(page: Page): Promise<unknown>;
}

/** Keys of the page, those that move about, and those that leave whatever is open. */
const PRESSED = [
  ...KEYS.flatMap(({ keys }) => keys.split(/,\s+|\s+/)).filter((key) => [...key].length === 1),
  ...[
    'Escape',
    'Escape',
    'Tab',
    'Enter',
    'Space',
    'ArrowLeft',
    'ArrowRight',
    'ArrowUp',
    'ArrowDown',
    'PageUp',
  ],
  ...['PageDown', 'Home', 'End', 'Control+z', 'Control+y', 'Delete'],
];

const TYPED = ['0', '1', '-5', '1e9', '1e-9', '12,5', 'abc', '', '3 in', '1e400', '∞', ' 7 ', '0x10'];

const CONTROLS = 'button, select, summary, input, [role=slider], [role=separator]';

/** Draws deeds from a source of numbers in [0, 1). */
export function deedFrom(random: () => number, { width, height }: { width: number; height: number }): Deed {
  const among = <T>(all: readonly T[]): T => at(all, Math.floor(random() * all.length));
  const kind = random();
  if (kind < 0.3) {
    const key = among(PRESSED);
    return { text: `key ${key}`, act: (page) => page.keyboard.press(key) };
  }
  if (kind < 0.5) {
    const [x, y] = [Math.round(random() * width), Math.round(random() * height)];
    return { text: `press at ${x}, ${y}`, act: (page) => page.mouse.click(x, y) };
  }
  const [which, choice, typed] = [random(), random(), among(TYPED)];
  return {
    text: `control ${which.toFixed(4)} ${choice.toFixed(4)} “${typed}”`,
    act: (page) => page.evaluate(useControl, { selector: CONTROLS, which, choice, typed }),
  };
}

/** Runs in the page: uses one of the controls in sight, as its kind is used. */
function useControl({
  selector,
  which,
  choice,
  typed,
}: {
  selector: string;
  which: number;
  choice: number;
  typed: string;
}) {
  const open = [...document.querySelectorAll('dialog[open]')].at(-1);
  const controls = [...(open ?? document.body).querySelectorAll<HTMLElement>(selector)].filter(
    (each) => each.checkVisibility() && !each.matches(':disabled, [type=file]'),
  );
  const control = controls[Math.floor(which * controls.length)];
  if (!control) return;
  control.focus();
  if (control instanceof HTMLSelectElement) {
    control.selectedIndex = Math.floor(choice * control.options.length);
    control.dispatchEvent(new Event('input', { bubbles: true }));
    control.dispatchEvent(new Event('change', { bubbles: true }));
  } else if (control instanceof HTMLInputElement && !control.matches('[type=checkbox], [type=radio]')) {
    if (control.type === 'range') {
      const [low, high] = [Number(control.min), Number(control.max)];
      control.value = String(low + choice * (high - low));
    } else control.value = typed;
    control.dispatchEvent(new Event('input', { bubbles: true }));
    control.dispatchEvent(new Event('change', { bubbles: true }));
  } else control.click();
}
