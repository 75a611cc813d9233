import type { Cursor } from './cursor.ts';
import type { TimeView } from './timeView.ts';

/** A drag shorter than this is a click, CSS pixels. */
const CLICK = 5;
/** Change of the window per pixel of the wheel. */
const WHEEL = 0.0015;

/**
 * Pointer and wheel over `pad`, which lies over the plots: moving places the cursor, dragging selects a window, the wheel zooms, a double
 * click follows the newest sample again.
 */
export class PointerActions {
  /** The window being dragged out, as fractions of the width. */
  selection: readonly [number, number] | null = null;
  private start = 0;
  private wasLive = false;

  constructor(
    private readonly pad: HTMLElement,
    private readonly view: TimeView,
    private readonly cursor: Cursor,
    private readonly onchange: () => void,
  ) {
    pad.addEventListener('pointerdown', (event) => this.press(event));
    pad.addEventListener('pointermove', (event) => this.move(event));
    pad.addEventListener('pointerup', (event) => this.release(event));
    pad.addEventListener('pointercancel', () => this.cancel());
    pad.addEventListener('pointerleave', () => this.leave());
    pad.addEventListener('dblclick', () => this.act(() => view.followLive()));
    pad.addEventListener('wheel', (event) => this.wheel(event), { passive: false });
  }

  private press(event: PointerEvent): void {
    if (event.button !== 0) return;
    this.pad.setPointerCapture(event.pointerId);
    this.act(() => {
      const at = this.fraction(event);
      this.start = event.clientX;
      this.selection = [at, at];
      // What is being selected must not move away underneath.
      this.wasLive = this.view.live;
      this.view.hold();
    });
  }

  private move(event: PointerEvent): void {
    this.act(() => {
      this.cursor.fraction = this.fraction(event);
      if (this.selection) this.selection = [this.selection[0], this.cursor.fraction];
    });
  }

  private release(event: PointerEvent): void {
    const selection = this.selection;
    if (!selection) return;
    this.act(() => {
      this.selection = null;
      if (Math.abs(event.clientX - this.start) >= CLICK) this.view.select(...selection);
      else if (this.wasLive) this.view.followLive();
    });
  }

  private cancel(): void {
    this.act(() => {
      this.selection = null;
      if (this.wasLive) this.view.followLive();
    });
  }

  private leave(): void {
    if (!this.selection) this.act(() => (this.cursor.fraction = null));
  }

  private wheel(event: WheelEvent): void {
    event.preventDefault();
    this.act(() => {
      const lines = event.deltaMode === WheelEvent.DOM_DELTA_LINE ? 16 : 1;
      this.view.zoom(Math.exp(event.deltaY * lines * WHEEL), this.fraction(event));
    });
  }

  private fraction(event: MouseEvent): number {
    const { left, width } = this.pad.getBoundingClientRect();
    return Math.min(Math.max((event.clientX - left) / width, 0), 1);
  }

  private act(change: () => void): void {
    change();
    this.onchange();
  }
}
