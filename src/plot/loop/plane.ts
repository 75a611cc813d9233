import { clipped } from '../canvas/canvas.ts';
import type { Theme } from '../canvas/theme.ts';
import { type Frame as Area, NO_FRAME } from '../frame.ts';
import { decimalsOf, stepAtLeast, tickRange } from '../ticks.ts';

type Context = CanvasRenderingContext2D;

/** What is shown of the complex plane: its middle, and half the length of the shorter side. */
export interface PlaneView {
  readonly re: number;
  readonly im: number;
  readonly half: number;
}

const FAR = 1e4;
const near = (pixel: number): number => Math.min(Math.max(pixel, -FAR), FAR);

/** An area of the complex plane with the same scale on both axes. */
export class Plane {
  area: Area = NO_FRAME;
  view: PlaneView;
  readonly #first: PlaneView;
  readonly #halves: readonly [least: number, most: number];

  constructor(first: PlaneView, halves: readonly [least: number, most: number]) {
    this.view = first;
    this.#first = first;
    this.#halves = halves;
  }

  reset(): void {
    this.view = this.#first;
  }

  /** Pixels per unit. */
  get unit(): number {
    return Math.min(this.area.width, this.area.height) / (2 * this.view.half);
  }

  x(re: number): number {
    return near(this.area.left + this.area.width / 2 + (re - this.view.re) * this.unit);
  }

  y(im: number): number {
    return near(this.area.top + this.area.height / 2 - (im - this.view.im) * this.unit);
  }

  /** Shows `factor` times as much about a pixel, or about the middle. */
  zoom(factor: number, x = this.x(this.view.re), y = this.y(this.view.im)): void {
    const [min, max] = this.#halves;
    const half = Math.min(Math.max(this.view.half * factor, min), max);
    const kept = half / this.view.half;
    const about = this.#at(x, y);
    this.view = {
      re: about.re + (this.view.re - about.re) * kept,
      im: about.im + (this.view.im - about.im) * kept,
      half,
    };
  }

  /** Moves what is shown by pixels. */
  pan(dx: number, dy: number): void {
    const { re, im, half } = this.view;
    this.view = { re: re - dx / this.unit, im: im + dy / this.unit, half };
  }

  drawGround(context: Context, theme: Theme): void {
    const { left, top, width, height } = this.area;
    context.fillStyle = theme.colour('ground');
    context.fillRect(left, top, width, height);
    const step = this.#step(theme);
    this.#eachTick(step, 'x', (re) => {
      context.fillStyle = re === 0 ? theme.colour('strong') : theme.colour('line');
      context.fillRect(Math.round(this.x(re)), top, 1, height);
    });
    this.#eachTick(step, 'y', (im) => {
      context.fillStyle = im === 0 ? theme.colour('strong') : theme.colour('line');
      context.fillRect(left, Math.round(this.y(im)), width, 1);
    });
  }

  drawLabels(context: Context, theme: Theme): void {
    const { left, top, width, height } = this.area;
    const step = this.#step(theme);
    const text = (value: number) => value.toFixed(decimalsOf(step)).replace('-', '−');
    context.fillStyle = theme.colour('soft');
    context.textBaseline = 'middle';
    context.textAlign = 'center';
    this.#eachTick(step, 'x', (re) => {
      const half = context.measureText(text(re)).width / 2;
      const x = this.x(re);
      if (x - half > left - theme.textSize && x + half <= left + width)
        context.fillText(text(re), x, top + height + theme.textSize * 0.75);
    });
    context.textAlign = 'right';
    this.#eachTick(step, 'y', (im) => {
      const y = this.y(im);
      const half = theme.textSize / 2;
      if (y > top + half && y < top + height - half) context.fillText(text(im), left - 5, y);
    });
  }

  circle(context: Context, re: number, im: number, radius: number): void {
    context.beginPath();
    context.arc(this.x(re), this.y(im), Math.min(radius * this.unit, FAR), 0, 2 * Math.PI);
  }

  clipped(context: Context, draw: () => void): void {
    clipped(context, this.area, draw);
  }

  #at(x: number, y: number): { re: number; im: number } {
    const { left, top, width, height } = this.area;
    return {
      re: this.view.re + (x - left - width / 2) / this.unit,
      im: this.view.im - (y - top - height / 2) / this.unit,
    };
  }

  #step(theme: Theme): number {
    return stepAtLeast((theme.textSize * 3) / this.unit);
  }

  #eachTick(step: number, along: 'x' | 'y', draw: (value: number) => void): void {
    const { left, top, width, height } = this.area;
    const from = this.#at(left, top + height);
    const to = this.#at(left + width, top);
    const [low, high] = along === 'x' ? [from.re, to.re] : [from.im, to.im];
    const [first, last] = tickRange(low, high, step);
    for (let k = first; k <= last; k++) draw(k * step);
  }
}
