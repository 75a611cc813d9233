import { element } from '../../ui/dom.ts';
import type { Frame } from '../frame.ts';

/**
 * A canvas that covers its parent at the full resolution of the screen and is drawn on in CSS
 * pixels.
 */
export class Canvas {
  readonly element = element('canvas', { class: 'charts-canvas', 'aria-hidden': 'true' });
  readonly context: CanvasRenderingContext2D;
  #width = 0;
  #height = 0;
  #ratio = 1;

  constructor() {
    const context = this.element.getContext('2d');
    if (!context) throw new Error('This browser offers no 2D canvas to draw the charts on.');
    this.context = context;
  }

  /**
   * Whether the page has moved to a screen of another resolution, or was magnified, since the last
   * resize.
   */
  get blurred(): boolean {
    return this.#ratio !== window.devicePixelRatio;
  }

  /** What is drawn, on a ground of its own, as a data URL of a PNG. */
  picture(ground: string): string {
    const copy = element('canvas', { width: this.element.width, height: this.element.height });
    const context = copy.getContext('2d');
    if (!context) throw new Error('This browser offers no 2D canvas to draw a picture on.');
    context.fillStyle = ground;
    context.fillRect(0, 0, copy.width, copy.height);
    context.drawImage(this.element, 0, 0);
    return copy.toDataURL('image/png');
  }

  /** Takes on a size in CSS pixels. */
  resize(width: number, height: number): void {
    this.#ratio = fitToScreen(this.context, width, height);
    this.#width = width;
    this.#height = height;
  }

  clear(): void {
    this.context.clearRect(0, 0, this.#width, this.#height);
  }
}

/** Gives a canvas the resolution of the screen, to be drawn on in CSS pixels. Returns how many of its own make one of them. */
export function fitToScreen(context: CanvasRenderingContext2D, width: number, height: number): number {
  const ratio = window.devicePixelRatio;
  const { canvas } = context;
  const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)];
  if (canvas.width !== w) canvas.width = w;
  if (canvas.height !== h) canvas.height = h;
  context.setTransform(ratio, 0, 0, ratio, 0, 0);
  return ratio;
}

/** Runs `draw` with everything outside a frame cut off. */
export function clipped(
  context: CanvasRenderingContext2D,
  { left, top, width, height }: Frame,
  draw: () => void,
): void {
  context.save();
  context.beginPath();
  context.rect(left, top, width, height);
  context.clip();
  draw();
  context.restore();
}
