import { decibels } from '../../../shared/core/decibels.ts';
import type { Graph } from '../../plot/loop/graph.ts';
import { element, setText } from '../../ui/dom.ts';
import type { Handle, Place, Shaping } from './handle.ts';
import './handles.css';

const FINE = 1.01;
const COARSE = 1.1;

const ARROWS: Readonly<Record<string, readonly [dx: number, dy: number]>> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
};

interface Grip {
  readonly button: HTMLButtonElement;
  handle: Handle;
}

/**
 * The handles over the magnitude plot as elements of the page, so that pointer, Tab and screen
 * reader find them. One drag, or one key held down, is one gesture.
 */
export class HandleLayer {
  readonly element = element('div', { class: 'loop-handles' });
  readonly #grips = new Map<string, Grip>();
  readonly #graph: Graph;
  readonly #shape: (shaping: Shaping, gesture: string | null) => void;
  #gestures = 0;

  constructor(graph: Graph, shape: (shaping: Shaping, gesture: string | null) => void) {
    this.#graph = graph;
    this.#shape = shape;
  }

  /** Puts the handles where the loop has them now; those that lie outside the plot are away. */
  show(handles: readonly Handle[]): void {
    const wanted = new Set(handles.map(({ id }) => id));
    for (const [id, { button }] of this.#grips) {
      if (wanted.has(id)) continue;
      button.remove();
      this.#grips.delete(id);
    }
    handles.forEach((handle, k) => {
      const grip = this.#grips.get(handle.id) ?? this.#add(handle);
      grip.handle = handle;
      // Moving an element that is in place would take the focus from it.
      if (this.element.children[k] !== grip.button)
        this.element.insertBefore(grip.button, this.element.children[k] ?? null);
      this.#place(grip);
    });
  }

  #place({ button, handle }: Grip): void {
    const { left, top, width, height } = this.#graph.frame;
    const x = this.#graph.x.at(handle.frequency);
    const y = Math.min(Math.max(this.#graph.y.at(handle.level), top), top + height);
    button.hidden = x < left - 1 || x > left + width + 1;
    button.style.transform = `translate(${x}px, ${y}px)`;
    button.title = `${handle.label}, ${handle.value}. ${handle.help}`;
    setText(button, handle.glyph);
    if (handle.drag) {
      button.setAttribute('aria-label', handle.label);
      button.setAttribute('aria-valuenow', handle.frequency.toPrecision(4));
      button.setAttribute('aria-valuetext', handle.value);
    } else {
      button.setAttribute('aria-label', `${handle.label}, ${handle.value}`);
    }
  }

  #add(handle: Handle): Grip {
    const button = element('button', {
      type: 'button',
      class: `loop-handle loop-handle-${handle.kind}`,
      'aria-description': handle.help,
      ...(handle.drag && { role: 'slider', 'aria-orientation': 'horizontal' }),
    });
    const grip: Grip = { button, handle };
    this.#grips.set(handle.id, grip);
    button.addEventListener('click', () => {
      if (grip.handle.press) this.#shape(grip.handle.press(), null);
    });
    // What lies below would take the pointer to pan, and the click with it.
    button.addEventListener('pointerdown', (event) => event.stopPropagation());
    button.addEventListener('dblclick', (event) => event.stopPropagation());
    button.addEventListener('keydown', (event) => this.#key(event, grip));
    if (handle.drag) this.#letDrag(grip);
    return grip;
  }

  #letDrag(grip: Grip): void {
    const { button } = grip;
    /** The handle as it was taken hold of, and how far beside its middle. */
    let held: { readonly handle: Handle; readonly dx: number; readonly dy: number } | null = null;
    button.addEventListener('pointerdown', (event) => {
      if (event.button !== 0) return;
      button.setPointerCapture(event.pointerId);
      const { x, y } = this.#pixel(event);
      const { handle } = grip;
      held = { handle, dx: x - this.#graph.x.at(handle.frequency), dy: y - this.#graph.y.at(handle.level) };
      this.#gestures++;
    });
    button.addEventListener('pointermove', (event) => {
      if (!held) return;
      const { x, y } = this.#pixel(event);
      const { left, width } = this.#graph.frame;
      const inside = Math.min(Math.max(x - held.dx, left), left + width - 1);
      this.#drag(held.handle, {
        frequency: this.#graph.x.valueAt(inside),
        level: this.#graph.y.valueAt(y - held.dy),
      });
    });
    for (const end of ['pointerup', 'pointercancel'] as const)
      button.addEventListener(end, () => (held = null));
  }

  #drag(handle: Handle, to: Place): void {
    if (handle.drag) this.#shape(handle.drag(to), `${handle.id} drag ${this.#gestures}`);
  }

  #key(event: KeyboardEvent, { handle }: Grip): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const arrow = ARROWS[event.key];
    if (arrow && handle.drag) {
      if (!event.repeat) this.#gestures++;
      const step = event.shiftKey ? COARSE : FINE;
      const [dx, dy] = arrow;
      this.#drag(handle, {
        frequency: handle.frequency * step ** dx,
        level: handle.level + dy * decibels(step),
      });
    } else if ((event.key === 'Delete' || event.key === 'Backspace') && handle.remove) {
      this.#shape(handle.remove(), null);
    } else {
      return;
    }
    event.preventDefault();
    event.stopPropagation();
  }

  #pixel({ clientX, clientY }: PointerEvent): { x: number; y: number } {
    const { left, top } = this.element.getBoundingClientRect();
    return { x: clientX - left, y: clientY - top };
  }
}
