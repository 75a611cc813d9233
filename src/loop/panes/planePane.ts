import { Canvas } from '../../plot/canvas/canvas.ts';
import { paint } from '../../plot/canvas/paint.ts';
import type { Theme } from '../../plot/canvas/theme.ts';
import type { LoopChartData } from '../../plot/loop/loopData.ts';
import { Plane, type PlaneView } from '../../plot/loop/plane.ts';
import type { Mark } from '../../plot/marks.ts';
import { element } from '../../ui/dom.ts';
import type { Pane } from './pane.ts';

/** Room for labels left and below, as a multiple of the text size. */
const GUTTER = 2.4;
const FOOT = 1.5;
const WHEEL = 0.0015;
const KEY_ZOOM = 1.25;
const KEY_PAN = 24;

interface PlanePaneOptions {
  readonly title: string;
  readonly description: string;
  readonly first: PlaneView;
  readonly halves: readonly [min: number, max: number];
  onChange(): void;
}

/**
 * A pane of the complex plane: the wheel and plus and minus zoom, a drag and the arrow keys move
 * it, Escape shows all of it again.
 */
export abstract class PlanePane implements Pane {
  readonly title: string;
  readonly element: HTMLElement;
  readonly legend = [];
  protected readonly plane: Plane;
  readonly #canvas = new Canvas();
  readonly #onChange: () => void;

  constructor({ title, description, first, halves, onChange }: PlanePaneOptions) {
    this.title = title;
    this.plane = new Plane(first, halves);
    this.#onChange = onChange;
    this.element = element(
      'div',
      {
        class: 'loop-pane loop-plane',
        role: 'group',
        tabindex: 0,
        'aria-label': title,
        'aria-description': `${description} Plus and minus zoom, arrows move, Escape shows all.`,
        onkeydown: (event) => this.#key(event as KeyboardEvent),
      },
      this.#canvas.element,
    );
    this.#listen();
  }

  measure(theme: Theme): void {
    const { width, height } = this.element.getBoundingClientRect();
    this.#canvas.resize(width, height);
    const left = GUTTER * theme.textSize;
    this.plane.frame = {
      left,
      top: 1,
      width: Math.max(1, width - left - 2),
      height: Math.max(1, height - FOOT * theme.textSize - 2),
    };
  }

  draw(data: LoopChartData | null, theme: Theme): void {
    if (this.#canvas.blurred) this.measure(theme);
    this.#canvas.clear();
    if (data) paint(this.#canvas.context, theme, this.marks(data, theme.textSize));
  }

  protected abstract marks(data: LoopChartData, textSize: number): Mark[];

  #listen(): void {
    const { element: pad, plane } = this;
    pad.addEventListener(
      'wheel',
      (event) => {
        event.preventDefault();
        plane.zoom(Math.exp(event.deltaY * WHEEL), event.offsetX, event.offsetY);
        this.#onChange();
      },
      { passive: false },
    );
    pad.addEventListener('pointerdown', (event) => pad.setPointerCapture(event.pointerId));
    pad.addEventListener('pointermove', (event) => {
      if (!pad.hasPointerCapture(event.pointerId)) return;
      plane.pan(event.movementX, event.movementY);
      this.#onChange();
    });
    pad.addEventListener('dblclick', () => {
      plane.reset();
      this.#onChange();
    });
  }

  #key(event: KeyboardEvent): void {
    if (event.altKey || event.ctrlKey || event.metaKey) return;
    const { plane } = this;
    const actions: Readonly<Record<string, () => void>> = {
      '+': () => plane.zoom(1 / KEY_ZOOM),
      '=': () => plane.zoom(1 / KEY_ZOOM),
      '-': () => plane.zoom(KEY_ZOOM),
      ArrowLeft: () => plane.pan(KEY_PAN, 0),
      ArrowRight: () => plane.pan(-KEY_PAN, 0),
      ArrowUp: () => plane.pan(0, KEY_PAN),
      ArrowDown: () => plane.pan(0, -KEY_PAN),
      Escape: () => plane.reset(),
    };
    const action = actions[event.key];
    if (!action) return;
    event.preventDefault();
    action();
    this.#onChange();
  }
}
