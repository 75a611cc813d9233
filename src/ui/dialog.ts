import { button, element, setText } from './dom.ts';

interface DialogOptions {
  readonly title: string;
  /** More classes than that of every dialog, e.g. `wide`. */
  readonly class?: string;
  /** What stands beside the button that closes the dialog. */
  readonly buttons?: readonly HTMLElement[];
  /** `Cancel` where closing discards something. */
  readonly closeLabel?: string;
  /**
   * What has the focus when the dialog opens. By default the title, so that a long dialog begins at its top; `control` is the
   * first field or button.
   */
  readonly focus?: 'title' | 'control';
  readonly onClose?: () => void;
}

/**
 * A dialog over the page: titled, closed with its button or with Escape, the focus back where it was afterwards. Title and row of
 * buttons stand before and after the content unless the content holds them elsewhere.
 */
export class Dialog {
  readonly element: HTMLDialogElement;
  readonly heading: HTMLElement;
  readonly buttons: HTMLElement;

  constructor({
    title,
    buttons = [],
    closeLabel = 'Close',
    focus = 'title',
    onClose,
    ...options
  }: DialogOptions) {
    const id = `dialog-${++dialogCount}`;
    const focusable = focus === 'title' ? { tabindex: -1, autofocus: true } : {};
    this.heading = element('h2', { id, ...focusable }, title);
    this.buttons = element(
      'div',
      { class: 'dialog-ways' },
      ...buttons,
      button(closeLabel, () => this.close()),
    );
    this.element = element('dialog', {
      class: ['dialog', options.class].filter(Boolean).join(' '),
      'aria-labelledby': id,
      onclose: onClose,
    });
  }

  set title(text: string) {
    setText(this.heading, text);
  }

  get isOpen(): boolean {
    return this.element.open;
  }

  /** Replaces what stands in the dialog. Returns the dialog. */
  fill(...content: readonly Node[]): this {
    const { element, heading, buttons } = this;
    element.replaceChildren(...content);
    if (!element.contains(heading)) element.prepend(heading);
    if (!element.contains(buttons)) element.append(buttons);
    return this;
  }

  open(): void {
    if (!this.element.isConnected) document.body.append(this.element);
    this.element.showModal();
    this.element.scrollTop = 0;
  }

  close(): void {
    this.element.close();
  }
}

let dialogCount = 0;

/** Whether a dialog covers the page, which has no keys then and is only seen behind it. */
export function isDialogOpen(): boolean {
  return document.querySelector('dialog[open]') !== null;
}
