import type { Markup } from '../../ui/markup.ts';

/** Of text at the usual size, px: drawings are as much larger as the text of the page is. */
const USUAL_TEXT = 15;

export interface DrawnPart {
  readonly element: HTMLElement;
  /** To be called when something has changed that the drawings show. */
  refresh(): void;
}

/**
 * A part of the page that is drawn anew when something or its width has changed, and only while it can be seen. `draw` is told the width
 * of the part in px of a drawing, whatever the size of the text is.
 */
export function drawnPart(element: HTMLElement, draw: (width: number) => Markup): DrawnPart {
  let shown = '';
  let drawnWidth = 0;

  function refresh(): void {
    const width = element.clientWidth;
    // Out of sight nothing is drawn; once it is back its width is another.
    drawnWidth = width;
    if (width === 0) return;
    const text = Number.parseFloat(getComputedStyle(document.documentElement).fontSize);
    const { text: made } = draw((width * USUAL_TEXT) / text);
    if (made === shown) return;
    shown = made;
    const open = new Set(openIn(element).map(({ id }) => id));
    element.innerHTML = made;
    for (const details of element.querySelectorAll('details')) details.open = open.has(details.id);
  }

  new ResizeObserver(() => {
    if (element.clientWidth !== drawnWidth) refresh();
  }).observe(element);

  return { element, refresh };
}

function openIn(element: HTMLElement): HTMLDetailsElement[] {
  return [...element.querySelectorAll('details')].filter(({ open, id }) => open && id !== '');
}
