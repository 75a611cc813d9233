import { type Frame, footOf, NO_FRAME, rightOf } from '../frame.ts';
import { area, label, labelWidth, line, type Mark } from '../marks.ts';
import { linearScale, type Scale } from '../scale.ts';
import { decimalsOf, multiplesOf, stepAtLeast } from '../ticks.ts';

/** What is shown of the complex plane: its middle, and half the length of the shorter side. */
export interface PlaneView {
  readonly re: number;
  readonly im: number;
  readonly half: number;
}

/** A frame on the complex plane with the same scale on both axes. */
export class Plane {
  frame: Frame = NO_FRAME;
  view: PlaneView;
  readonly #first: PlaneView;
  readonly #halves: readonly [min: number, max: number];

  /** `halves`: what `half` may become by zooming. */
  constructor(first: PlaneView, halves: readonly [min: number, max: number]) {
    this.view = first;
    this.#first = first;
    this.#halves = halves;
  }

  reset(): void {
    this.view = this.#first;
  }

  /** Pixels per unit. */
  get unit(): number {
    return Math.min(this.frame.width, this.frame.height) / (2 * this.view.half);
  }

  /** From real parts to pixels. */
  get x(): Scale {
    const half = this.frame.width / 2 / this.unit;
    const { re } = this.view;
    return linearScale(re - half, re + half, this.frame.left, rightOf(this.frame));
  }

  /** From imaginary parts to pixels. */
  get y(): Scale {
    const half = this.frame.height / 2 / this.unit;
    const { im } = this.view;
    return linearScale(im - half, im + half, footOf(this.frame), this.frame.top);
  }

  /** Shows `factor` times as much about a pixel, or about the middle. */
  zoom(factor: number, x = this.x.at(this.view.re), y = this.y.at(this.view.im)): void {
    const [min, max] = this.#halves;
    const half = Math.min(Math.max(this.view.half * factor, min), max);
    const kept = half / this.view.half;
    const [re, im] = [this.x.valueAt(x), this.y.valueAt(y)];
    this.view = {
      re: re + (this.view.re - re) * kept,
      im: im + (this.view.im - im) * kept,
      half,
    };
  }

  /** Moves what is shown by pixels. */
  pan(dx: number, dy: number): void {
    const { re, im, half } = this.view;
    this.view = { re: re - dx / this.unit, im: im + dy / this.unit, half };
  }
}

/** What lies below the curves of a plane. */
export function planeGround(plane: Plane, textSize: number): Mark[] {
  const { frame, x, y } = plane;
  const step = stepOf(plane, textSize);
  const colourOf = (value: number) => (value === 0 ? 'strong' : 'line');
  return [
    area(frame, { colour: 'ground' }),
    ...multiplesOf(step, x.from, x.to).map((re) =>
      line(x.at(re), frame.top, x.at(re), footOf(frame), { colour: colourOf(re) }),
    ),
    ...multiplesOf(step, y.from, y.to).map((im) =>
      line(frame.left, y.at(im), rightOf(frame), y.at(im), { colour: colourOf(im) }),
    ),
  ];
}

/** Real parts below the frame, imaginary parts beside it. */
export function planeLabels(plane: Plane, textSize: number): Mark[] {
  const { frame, x, y } = plane;
  const step = stepOf(plane, textSize);
  const textOf = (value: number) => value.toFixed(decimalsOf(step)).replace('-', '−');
  const below = multiplesOf(step, x.from, x.to).flatMap((re) => {
    const [place, half] = [x.at(re), labelWidth(textOf(re), textSize) / 2];
    if (place - half <= frame.left - textSize || place + half > rightOf(frame)) return [];
    return [label(place, footOf(frame) + textSize * 0.75, textOf(re), { align: 'middle', colour: 'soft' })];
  });
  const beside = multiplesOf(step, y.from, y.to).flatMap((im) => {
    const place = y.at(im);
    if (place <= frame.top + textSize / 2 || place >= footOf(frame) - textSize / 2) return [];
    return [label(frame.left - 5, place, textOf(im), { align: 'end', colour: 'soft' })];
  });
  return [...below, ...beside];
}

function stepOf({ unit }: Plane, textSize: number): number {
  return stepAtLeast((textSize * 3) / unit);
}
