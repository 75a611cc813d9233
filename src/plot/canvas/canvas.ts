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
    const ratio = window.devicePixelRatio;
    const [w, h] = [Math.round(width * ratio), Math.round(height * ratio)];
    if (this.element.width !== w) this.element.width = w;
    if (this.element.height !== h) this.element.height = h;
    this.#ratio = ratio;
    this.#width = width;
    this.#height = height;
    this.context.setTransform(ratio, 0, 0, ratio, 0, 0);
  }

  clear(): void {
    this.context.clearRect(0, 0, this.#width, this.#height);
  }
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
