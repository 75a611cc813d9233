import { button, element } from '../ui/dom.ts';
import './paper.css';

/** A page to print, and what a person can do with it besides. */
export interface Paper {
  readonly title: string;
  readonly html: string;
  readonly ways: readonly { readonly text: string; readonly action: () => void }[];
}

/**
 * Shows a page in a dialog at the end of `host`, as it will be printed; from there it is printed or saved. The dialog is gone once it
 * is closed.
 */
export function openPaper(host: HTMLElement, { title, html, ways }: Paper): HTMLDialogElement {
  // A document of its own: the style of the page cannot reach it, and only it is printed. It runs no script.
  const paper = element('iframe', {
    title: `${title} as printed`,
    sandbox: 'allow-same-origin allow-modals allow-downloads allow-popups allow-popups-to-escape-sandbox',
    srcdoc: html,
    // To be scrolled by the keyboard.
    tabindex: 0,
  });
  const dialog = element(
    'dialog',
    { class: 'dialog paper', 'aria-labelledby': 'paper-title' },
    element(
      'header',
      {},
      element('h2', { id: 'paper-title' }, title),
      element(
        'div',
        { class: 'dialog-ways' },
        button('Print', () => paper.contentWindow?.print(), { class: 'primary' }),
        ...ways.map(({ text, action }) => button(text, action)),
        button('Close', () => dialog.close()),
      ),
    ),
    paper,
  );
  dialog.addEventListener('close', () => dialog.remove());
  host.append(dialog);
  dialog.showModal();
  return dialog;
}
