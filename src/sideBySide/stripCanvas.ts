import { Canvas } from '../plot/canvas/canvas.ts';
import { readTheme, type Theme } from '../plot/canvas/theme.ts';
import type { StripPlot } from '../plot/strip/stripPlot.ts';
import { element } from '../ui/dom.ts';

interface StripCanvasOptions {
  readonly class: string;
  /** Room for the numbers at its left, and above and below the frame, in sizes of the text. */
  readonly gutter: number;
  readonly edge: number;
}

/** Where one strip is drawn by itself, as large as its place on the page. */
export class StripCanvas {
  readonly element: HTMLElement;
  readonly #canvas = new Canvas();
  readonly #gutter: number;
  readonly #edge: number;
  #theme: Theme | null = null;

  constructor({ class: name, gutter, edge }: StripCanvasOptions) {
    this.#gutter = gutter;
    this.#edge = edge;
    this.element = element('div', { class: name }, this.#canvas.element);
  }

  /** After a change of size, theme or text size, or for another plot. */
  restyle(): void {
    this.#theme = null;
  }

  /** Gives a plot its frame; how it is to look, or null where there is nothing to draw it on. */
  measure(plot: StripPlot): Theme | null {
    if (this.#theme) return this.#theme;
    const { clientWidth, clientHeight } = this.element;
    if (clientWidth === 0 || clientHeight === 0) return null;
    this.#canvas.resize(clientWidth, clientHeight);
    const theme = readTheme(this.element);
    const left = Math.round(this.#gutter * theme.textSize);
    const top = Math.ceil(this.#edge * theme.textSize);
    plot.frame = { left, top, width: clientWidth - left, height: clientHeight - 2 * top };
    this.#theme = theme;
    return theme;
  }

  /** Ground, grid and numbers of a plot, with `draw` between them, cut off at its frame. */
  paint(plot: StripPlot, theme: Theme, draw: (context: CanvasRenderingContext2D) => void): void {
    const { context } = this.#canvas;
    this.#canvas.clear();
    context.font = theme.font;
    context.textBaseline = 'middle';
    context.save();
    context.fillStyle = theme.colour('ground');
    const { left, top, width, height } = plot.frame;
    context.fillRect(left, top, width, height);
    plot.clip(context);
    plot.drawGrid(context, theme);
    draw(context);
    context.restore();
    plot.drawLabels(context, theme);
  }
}
