import { ranged } from '../../shared/core/format.ts';
import { type Box, labelPlace } from './labelPlace.ts';
import { Legend } from './legend.ts';
import { Magnifier } from './lens/magnifier.ts';
import type { RunState } from './parts/tower.ts';

const SVG = 'http://www.w3.org/2000/svg';

const STATE_TEXT: Record<RunState, string> = { paused: 'Paused', running: '', tripped: 'Tripped' };

/** A point on the screen, CSS pixels from the stage's corner. */
export interface ScreenPoint {
  x: number;
  y: number;
}

/** Everything that lies over the picture: magnifier with its leader line, force of the hand, legend, state. */
export class Overlay {
  readonly element = document.createElement('div');
  readonly magnifier = new Magnifier();
  readonly legend = new Legend();
  readonly #lines = document.createElementNS(SVG, 'svg');
  readonly #leader = document.createElementNS(SVG, 'line');
  readonly #ring = document.createElementNS(SVG, 'circle');
  readonly #hand = document.createElement('output');
  readonly #arrow = document.createElement('div');
  readonly #state = document.createElement('div');
  readonly #note = document.createElement('p');
  readonly #chips = document.createElement('p');

  constructor() {
    this.element.className = 'stage-overlay';
    this.#lines.setAttribute('class', 'stage-lines');
    this.#lines.setAttribute('aria-hidden', 'true');
    this.#lines.append(this.#leader, this.#ring);
    this.#hand.className = 'stage-hand';
    this.#hand.setAttribute('aria-live', 'off');
    this.#hand.hidden = true;
    this.#arrow.className = 'stage-arrow';
    this.#arrow.setAttribute('aria-hidden', 'true');
    this.#arrow.hidden = true;
    this.#state.className = 'stage-state';
    this.#note.className = 'stage-note';
    this.#chips.className = 'stage-chips';
    this.#chips.hidden = true;
    this.element.append(
      this.#lines,
      this.magnifier.element,
      this.legend.element,
      this.#hand,
      this.#arrow,
      this.#state,
      this.#note,
      this.#chips,
    );
    this.setNote('The machine is not on the stage yet.', false);
  }

  /** A sentence where the machine would be; the magnifier needs values, not a machine. */
  setNote(text: string, magnifier: boolean): void {
    this.#note.textContent = text;
    this.#note.hidden = text === '';
    this.magnifier.element.hidden = !magnifier;
    this.#lines.style.display = text === '' ? '' : 'none';
  }

  /** What the chips on the machine do; empty: there are none. */
  setChips(text: string): void {
    if (this.#chips.textContent === text) return;
    this.#chips.textContent = text;
    this.#chips.hidden = text === '';
  }

  setState(state: RunState): void {
    this.element.setAttribute('data-state', state);
    this.#state.textContent = STATE_TEXT[state];
  }

  /** The leader from the rim of the lens to the nearest of these points. */
  lead(points: readonly ScreenPoint[]): void {
    const lens = this.magnifier.canvas;
    const radius = this.magnifier.radius;
    const cx = this.magnifier.element.offsetLeft + lens.offsetLeft + radius;
    const cy = this.magnifier.element.offsetTop + lens.offsetTop + radius;
    const away = (p: ScreenPoint) => Math.hypot(p.x - cx, p.y - cy);
    const nearest = points.reduce((a, b) => (away(b) < away(a) ? b : a));
    const { x, y } = nearest;
    const distance = away(nearest) || 1;
    const [ux, uy] = [(x - cx) / distance, (y - cy) / distance];
    const r = 7;
    set(this.#leader, { x1: cx + ux * radius, y1: cy + uy * radius, x2: x - ux * r, y2: y - uy * r });
    set(this.#ring, { cx: x, cy: y, r });
  }

  /** Whether an arrow stands over the table. */
  set pointsAtTable(on: boolean) {
    this.#arrow.hidden = !on;
  }

  /** The top of the table, for that arrow. */
  pointAt({ x, y }: ScreenPoint): void {
    if (this.#arrow.hidden) return;
    this.#arrow.style.transform = `translate(${Math.round(x)}px, ${Math.round(y)}px) translate(-50%, -115%)`;
  }

  /** Force of the hand, N, beside it; null: no hand. */
  showHand(force: number | null, { x, y }: ScreenPoint): void {
    this.#hand.hidden = force === null;
    if (force === null) return;
    this.#hand.textContent = `Hand ${ranged(force, 'N')}`;
    const { canvas, caption, element } = this.magnifier;
    const inStage = ({ offsetLeft, offsetTop, offsetWidth, offsetHeight }: HTMLElement): Box => ({
      left: element.offsetLeft + offsetLeft,
      top: element.offsetTop + offsetTop,
      width: offsetWidth,
      height: offsetHeight,
    });
    const { left, top } = labelPlace(
      { x, y },
      { width: this.#hand.offsetWidth, height: this.#hand.offsetHeight },
      this.element.clientWidth,
      element.hidden ? [] : [inStage(caption), inStage(canvas)],
    );
    this.#hand.style.transform = `translate(${Math.round(left)}px, ${Math.round(top)}px)`;
  }
}

function set(element: SVGElement, attributes: Record<string, number>): void {
  for (const [name, value] of Object.entries(attributes)) element.setAttribute(name, value.toFixed(1));
}
