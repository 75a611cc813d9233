import { Dialog } from '../ui/dialog.ts';
import { button, element } from '../ui/dom.ts';
import './paper.css';

/** A page to print, and what a person can do with it besides. */
interface Paper {
  readonly title: string;
  readonly html: string;
  readonly actions: readonly { readonly text: string; readonly action: () => void }[];
}

/** Shows a page in a dialog, as it will be printed; from there it is printed or saved. */
export function openPaper({ title, html, actions }: Paper): void {
  // A document of its own: the style of the page cannot reach it, and only it is printed. It runs no script.
  const paper = element('iframe', {
    title: `${title} as printed`,
    sandbox: 'allow-same-origin allow-modals allow-downloads allow-popups allow-popups-to-escape-sandbox',
    srcdoc: html,
    // To be scrolled by the keyboard.
    tabindex: 0,
  });
  const dialog = new Dialog({
    title,
    class: 'paper',
    focus: 'control',
    buttons: [
      button('Print', () => paper.contentWindow?.print(), { class: 'primary' }),
      ...actions.map(({ text, action }) => button(text, action)),
    ],
    onClose: () => dialog.element.remove(),
  });
  dialog.fill(element('div', { class: 'paper-head' }, dialog.heading, dialog.buttons), paper).open();
}
