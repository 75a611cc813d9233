import { element } from '../../ui/dom.ts';
import './forms.css';

export interface Popover {
  readonly element: HTMLDetailsElement;
  close(): void;
}

/** A button that folds out a small form over the plots; Escape, or leaving it, folds it away. */
export function createPopover(text: string, title: string, ...content: HTMLElement[]): Popover {
  const summary = element('summary', { title }, text);
  const details = element(
    'details',
    {
      class: 'loop-popover',
      onkeydown: (event) => {
        if ((event as KeyboardEvent).key !== 'Escape' || !details.open) return;
        event.stopPropagation();
        details.open = false;
        summary.focus();
      },
      onfocusout: (event) => {
        const to = (event as FocusEvent).relatedTarget as Node | null;
        if (to !== null && !details.contains(to)) details.open = false;
      },
    },
    summary,
    element('div', { class: 'loop-form' }, ...content),
  );
  return {
    element: details,
    close: () => {
      details.open = false;
    },
  };
}
