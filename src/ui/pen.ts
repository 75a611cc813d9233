import './pen.css';
import { isDialogOpen } from './dialog.ts';
import { button, element } from './dom.ts';
import { keyOf } from './keys.ts';

const SVG = 'http://www.w3.org/2000/svg';

let pen: Pen | null = null;

/** Takes the pen, or puts it away with all that was drawn. */
export function togglePen(): void {
  if (pen) {
    pen.element.remove();
    document.removeEventListener('keydown', putAway, true);
    pen = null;
  } else {
    pen = new Pen();
    document.addEventListener('keydown', putAway, true);
    document.body.append(pen.element);
  }
}

/** Escape puts the pen away, and only then leaves what is below it. A dialog lies over the pen and comes first. */
function putAway(event: KeyboardEvent): void {
  if (event.key !== 'Escape' || isDialogOpen()) return;
  event.preventDefault();
  event.stopPropagation();
  togglePen();
}

export function isPenOut(): boolean {
  return pen !== null;
}

/** A sheet over the page, to draw on with mouse, pen or finger. The keyboard stays with what is below it. */
class Pen {
  readonly element: HTMLElement;
  readonly #sheet = document.createElementNS(SVG, 'svg');
  /** What is being drawn, by the pointer that draws it. */
  readonly #strokes = new Map<number, SVGPathElement>();

  constructor() {
    this.#sheet.setAttribute('role', 'img');
    this.#sheet.setAttribute('aria-label', 'Drawing over the page');
    this.#sheet.addEventListener('pointerdown', (event) => this.#begin(event));
    this.#sheet.addEventListener('pointermove', (event) => this.#draw(event));
    for (const end of ['pointerup', 'pointercancel'] as const)
      this.#sheet.addEventListener(end, ({ pointerId }) => this.#strokes.delete(pointerId));
    this.element = element(
      'div',
      { class: 'pen' },
      element(
        'div',
        { class: 'pen-ways', role: 'group', 'aria-label': 'Drawing' },
        button('Wipe', () => this.#sheet.replaceChildren()),
        button('Stop drawing', togglePen, { keys: keyOf('pen') }),
      ),
    );
    this.element.prepend(this.#sheet);
  }

  #begin(event: PointerEvent): void {
    if (event.button !== 0) return;
    event.preventDefault();
    this.#sheet.setPointerCapture(event.pointerId);
    const stroke = document.createElementNS(SVG, 'path');
    const place = `${event.clientX} ${event.clientY}`;
    // A press that does not move is a dot.
    stroke.setAttribute('d', `M${place}L${place}`);
    this.#sheet.append(stroke);
    this.#strokes.set(event.pointerId, stroke);
  }

  #draw(event: PointerEvent): void {
    const stroke = this.#strokes.get(event.pointerId);
    if (!stroke) return;
    const passed = event.getCoalescedEvents().map(({ clientX, clientY }) => `L${clientX} ${clientY}`);
    stroke.setAttribute('d', `${stroke.getAttribute('d')}${passed.join('')}`);
  }
}
