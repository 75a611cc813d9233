import { clipped } from '../canvas/canvas.ts';
import type { Theme } from '../canvas/theme.ts';
import { type Frame as Area, NO_FRAME } from '../frame.ts';
import { DASHES } from '../pens.ts';
import { type FrequencyAxis, tickText } from './frequencyAxis.ts';
import type { LevelScale } from './levelScale.ts';

type Context = CanvasRenderingContext2D;

/** Farther off than this, CSS pixels, a line is out of sight; a canvas draws badly at 1e9. */
const FAR = 1e4;

const near = (pixel: number): number => Math.min(Math.max(pixel, -FAR), FAR);

/** One plot over frequency: an area of a canvas, the shared frequency axis, and a vertical scale of its own. */
export class Graph {
  area: Area = NO_FRAME;
  readonly axis: FrequencyAxis;
  readonly scale: LevelScale;

  constructor(axis: FrequencyAxis, scale: LevelScale) {
    this.axis = axis;
    this.scale = scale;
  }

  x(frequency: number): number {
    return this.area.left + this.axis.fraction(frequency) * this.area.width;
  }

  y(level: number): number {
    return this.area.top + this.scale.fraction(level) * this.area.height;
  }

  frequencyAt(x: number): number {
    return this.axis.frequencyAt((x - this.area.left) / this.area.width);
  }

  levelAt(y: number): number {
    return this.scale.levelAt((y - this.area.top) / this.area.height);
  }

  drawGround(context: Context, theme: Theme, reference: number | null): void {
    const { left, top, width, height } = this.area;
    context.fillStyle = theme.colour('ground');
    context.fillRect(left, top, width, height);
    for (const { frequency, digit } of this.axis.ticks()) {
      context.globalAlpha = digit === 1 ? 1 : 0.45;
      context.fillStyle = theme.colour('line');
      context.fillRect(Math.round(this.x(frequency)), top, 1, height);
    }
    context.globalAlpha = 1;
    for (const level of this.scale.ticks()) {
      context.fillStyle = level === reference ? theme.colour('strong') : theme.colour('line');
      context.fillRect(left, Math.round(this.y(level)), width, 1);
    }
  }

  /** Levels beside the area; where there is no room for all, the reference comes first. */
  drawLevels(
    context: Context,
    theme: Theme,
    reference: number | null,
    textOf: (level: number) => string,
  ): void {
    const { left, top, height } = this.area;
    const half = theme.textSize * 0.55;
    context.fillStyle = theme.colour('soft');
    context.textAlign = 'right';
    context.textBaseline = 'middle';
    const taken: number[] = [];
    const levels = this.scale.ticks().reverse();
    for (const level of [...levels.filter((each) => each === reference), ...levels]) {
      const y = Math.min(Math.max(this.y(level), top + half), top + height - half);
      if (taken.some((other) => Math.abs(other - y) < theme.textSize)) continue;
      taken.push(y);
      context.fillText(textOf(level), left - 5, y);
    }
  }

  /** Frequencies below the area; 2 and 5 too where they have room. */
  drawFrequencies(context: Context, theme: Theme): void {
    const { left, width, top, height } = this.area;
    const middle = top + height + theme.textSize * 0.75;
    context.fillStyle = theme.colour('soft');
    context.textBaseline = 'middle';
    context.textAlign = 'right';
    context.fillText('Hz', left + width, middle);
    context.textAlign = 'center';
    let end = left - theme.textSize;
    const last = left + width - theme.textSize * 1.6;
    const ticks = this.axis.ticks();
    const decade = width / Math.log10(this.axis.to / this.axis.from);
    const wanted = decade > theme.textSize * 9 ? [1, 2, 5] : [1];
    for (const { frequency, digit } of ticks) {
      if (!wanted.includes(digit)) continue;
      const text = tickText(frequency);
      const half = context.measureText(text).width / 2;
      const x = this.x(frequency);
      if (x - half < end + 4 || x + half > last) continue;
      context.fillText(text, x, middle);
      end = x + half;
    }
  }

  /** Runs `draw` with everything outside the area cut off. */
  clipped(context: Context, draw: () => void): void {
    clipped(context, this.area, draw);
  }

  /** A curve of levels over a grid of frequencies. */
  drawCurve(
    context: Context,
    frequency: ArrayLike<number>,
    level: (k: number) => number,
    style: { readonly dash: keyof typeof DASHES; readonly width: number },
  ): void {
    context.beginPath();
    for (let k = 0; k < frequency.length; k++) {
      context.lineTo(near(this.x(frequency[k]!)), near(this.y(level(k))));
    }
    context.lineWidth = style.width;
    context.lineJoin = 'round';
    context.setLineDash(DASHES[style.dash]);
    context.stroke();
    context.setLineDash([]);
  }

  /** A ring on a value, filled with the colour of the ground. */
  drawRing(context: Context, theme: Theme, frequency: number, level: number, radius: number): void {
    context.beginPath();
    context.arc(near(this.x(frequency)), near(this.y(level)), radius, 0, 2 * Math.PI);
    context.fillStyle = theme.colour('ground');
    context.fill();
    context.lineWidth = 1.5;
    context.stroke();
  }
}

/** Text that stays readable on top of curves. */
export function drawLabel(context: Context, theme: Theme, text: string, x: number, y: number): void {
  context.lineWidth = 4;
  context.lineJoin = 'round';
  context.strokeStyle = theme.colour('ground');
  context.strokeText(text, x, y);
  context.fillText(text, x, y);
}
