import type { Cursor } from './cursor.ts';
import type { TimeView } from './timeView.ts';

/** A drag shorter than this is a click, CSS pixels. */
const CLICK = 5;
/** Change of the window per pixel of the wheel. */
const WHEEL = 0.0015;

/**
 * Pointer and wheel over `pad`, which lies over the plots: moving places the cursor, a click with
 * Shift the second one, dragging selects a window, the wheel zooms, a double click follows the newest sample again.
 */
export class PointerActions {
  readonly #pad: HTMLElement;
  readonly #view: TimeView;
  readonly #cursor: Cursor;
  readonly #onChange: () => void;
  /** The window being dragged out, as fractions of the width. */
  selection: readonly [number, number] | null = null;
  #start = 0;
  #wasLive = false;

  constructor(pad: HTMLElement, view: TimeView, cursor: Cursor, onChange: () => void) {
    this.#pad = pad;
    this.#view = view;
    this.#cursor = cursor;
    this.#onChange = onChange;
    pad.addEventListener('pointerdown', (event) => this.#press(event));
    pad.addEventListener('pointermove', (event) => this.#move(event));
    pad.addEventListener('pointerup', (event) => this.#release(event));
    pad.addEventListener('pointercancel', () => this.#cancel());
    pad.addEventListener('pointerleave', () => this.#leave());
    pad.addEventListener('dblclick', () => this.#act(() => view.followLive()));
    pad.addEventListener('wheel', (event) => this.#wheel(event), { passive: false });
  }

  #press(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.#pad.setPointerCapture(event.pointerId);
    this.#act(() => {
      const at = this.#fraction(event);
      this.#start = event.clientX;
      this.selection = [at, at];
      // What is being selected must not move away underneath.
      this.#wasLive = this.#view.live;
      this.#view.hold();
    });
  }

  #move(event: PointerEvent): void {
    this.#act(() => {
      this.#cursor.fraction = this.#fraction(event);
      if (this.selection) this.selection = [this.selection[0], this.#cursor.fraction];
    });
  }

  #release(event: PointerEvent): void {
    const selection = this.selection;
    if (!selection) return;
    this.#act(() => {
      this.selection = null;
      if (Math.abs(event.clientX - this.#start) >= CLICK) this.#view.select(...selection);
      else {
        if (event.shiftKey) this.#cursor.mark = this.#view.timeAt(this.#fraction(event));
        if (this.#wasLive) this.#view.followLive();
      }
    });
  }

  #cancel(): void {
    this.#act(() => {
      this.selection = null;
      if (this.#wasLive) this.#view.followLive();
    });
  }

  #leave(): void {
    if (!this.selection) this.#act(() => (this.#cursor.fraction = null));
  }

  #wheel(event: WheelEvent): void {
    event.preventDefault();
    this.#act(() => {
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      this.#view.zoom(Math.exp(event.deltaY * lines * WHEEL), this.#fraction(event));
    });
  }

  #fraction(event: MouseEvent): number {
    const { left, width } = this.#pad.getBoundingClientRect();
    return Math.min(Math.max((event.clientX - left) / width, 0), 1);
  }

  #act(change: () => void): void {
    change();
    this.#onChange();
  }
}
