import { element } from '../../ui/dom.ts';

/** One line of text with its label above it. */
export function textField(label: string, value: string, write: (text: string) => void): HTMLElement {
  const input = element('input', { type: 'text', value, oninput: () => write(input.value.trim()) });
  return element('label', { class: 'lesson-written' }, label, input);
}

/** Several lines, each of them something of its own. */
export function linesField(
  label: string,
  value: string,
  write: (text: string) => void,
  rows: number,
): HTMLElement {
  const area = element('textarea', { rows, oninput: () => write(area.value) }, value);
  return element('label', { class: 'lesson-written' }, label, area);
}

/** A text that is broken into lines where it is shown. */
export function paragraphField(
  label: string,
  value: string,
  write: (text: string) => void,
  rows: number,
): HTMLElement {
  return linesField(label, value, (text) => write(text.trim().replace(/\s+/g, ' ')), rows);
}

/** The lines that say something. */
export function linesOf(text: string): string[] {
  return text
    .split('\n')
    .map((line) => line.trim())
    .filter((line) => line !== '');
}
