import { at } from '../../shared/core/at.ts';
import type { Colour } from '../ui/look/colours.ts';
import type { Frame } from './frame.ts';
import type { Fill, Pen } from './pens.ts';
import type { Scale } from './scale.ts';

/**
 * What a chart consists of, as plain data in px, for either painter: `svg.ts` or `canvas/paint.ts`.
 * Curves, points and shapes stand for values; everything else helps to read them.
 */
export type Mark = Curve | Point | Shape | Line | Box | Circle | Label | Clip;

/** A line through values. Those that are not finite leave a gap. */
export interface Curve {
  readonly kind: 'curve';
  /** x and y of each point in turn, one list for each stretch without a gap. */
  readonly runs: readonly (readonly number[])[];
  readonly pen: Pen;
  readonly count: number;
  /** How many of them are not finite. */
  readonly missing: number;
}

/** A single value. */
export interface Point {
  readonly kind: 'point';
  readonly x: number;
  readonly y: number;
  /** A ring is filled with the ground, so that what lies below does not show through. */
  readonly symbol: 'dot' | 'ring' | 'cross';
  readonly radius: number;
  readonly pen: Pen;
}

/** A filled outline whose size stands for a value. */
export interface Shape {
  readonly kind: 'shape';
  readonly name: string;
  readonly value: number;
  /** As SVG writes paths, and the rectangle that holds it. */
  readonly path: string;
  readonly box: Frame;
  readonly fill: Fill;
}

/** A line that guides the eye: x and y of each of its points in turn. */
interface Line {
  readonly kind: 'line';
  readonly points: readonly number[];
  readonly pen: Pen;
}

interface Box {
  readonly kind: 'box';
  readonly frame: Frame;
  readonly fill?: Fill;
  readonly pen?: Pen;
}

interface Circle {
  readonly kind: 'circle';
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly fill?: Fill;
  readonly pen?: Pen;
}

export interface Label {
  readonly kind: 'label';
  readonly x: number;
  /** Middle of the line of text. */
  readonly y: number;
  readonly text: string;
  readonly align: 'start' | 'middle' | 'end';
  readonly colour: Colour;
  /** Readable on top of curves. */
  readonly halo: boolean;
  /** Reads from bottom to top. */
  readonly upward: boolean;
  /** Says what is wrong with the values; whoever cannot see the drawing is told as well. */
  readonly isRemark: boolean;
}

/** What is cut off at a frame. */
interface Clip {
  readonly kind: 'clip';
  readonly frame: Frame;
  readonly marks: readonly Mark[];
}

/** Nearer than this, px, the next point of a curve is left out: nobody sees it. */
const NEAREST = 0.4;
/** Farther off than this, px, a point is out of sight, and painters draw badly. */
const FAR = 1e4;

/** A curve through values that belong together, one for each x. */
export function curve(
  xs: ArrayLike<number>,
  ys: ArrayLike<number>,
  { x, y }: { readonly x: Scale; readonly y: Scale },
  pen: Pen,
): Curve {
  const count = Math.min(xs.length, ys.length);
  const runs: number[][] = [];
  let run: number[] | null = null;
  let missing = 0;
  for (let k = 0; k < count; k++) {
    const px = placeOf(at(xs, k), x);
    const py = placeOf(at(ys, k), y);
    if (Number.isNaN(px + py)) {
      missing++;
      run = null;
    } else if (run === null) {
      run = [px, py];
      runs.push(run);
    } else if (
      k === count - 1 ||
      Math.hypot(px - at(run, run.length - 2), py - at(run, run.length - 1)) >= NEAREST
    ) {
      run.push(px, py);
    }
  }
  return { kind: 'curve', runs, pen, count, missing };
}

/** NaN for what is not finite; zero on a logarithmic scale is far below it. */
function placeOf(value: number, scale: Scale): number {
  return Number.isFinite(value) ? Math.min(Math.max(scale.at(value), -FAR), FAR) : Number.NaN;
}

export function point(x: number, y: number, symbol: Point['symbol'], radius: number, pen: Pen = {}): Point {
  return { kind: 'point', x, y, symbol, radius, pen };
}

export function line(x1: number, y1: number, x2: number, y2: number, pen: Pen = {}): Line {
  return { kind: 'line', points: [x1, y1, x2, y2], pen };
}

export function bentLine(points: readonly number[], pen: Pen): Line {
  return { kind: 'line', points, pen };
}

export function area(frame: Frame, fill: Fill): Box {
  return { kind: 'box', frame, fill };
}

export function border(frame: Frame, pen: Pen): Box {
  return { kind: 'box', frame, pen };
}

export function circle(
  x: number,
  y: number,
  radius: number,
  { fill, pen }: { readonly fill?: Fill; readonly pen?: Pen },
): Circle {
  return { kind: 'circle', x, y, radius, ...(fill && { fill }), ...(pen && { pen }) };
}

const PLAIN = { align: 'start', colour: 'ink', halo: false, upward: false, isRemark: false } as const;

export function label(
  x: number,
  y: number,
  text: string,
  style: Partial<Pick<Label, 'align' | 'colour' | 'halo' | 'upward' | 'isRemark'>> = {},
): Label {
  return { kind: 'label', x, y, text, ...PLAIN, ...style };
}

/** Whether a mark can be drawn: what is not finite has no place. */
export function hasPlace(mark: Mark): boolean {
  switch (mark.kind) {
    case 'curve':
      return mark.runs.length > 0;
    case 'line':
      return mark.points.every(Number.isFinite);
    case 'shape':
      return isPlaced(mark.box);
    case 'box':
      return isPlaced(mark.frame);
    case 'clip':
      return true;
    case 'circle':
      return Number.isFinite(mark.x + mark.y + mark.radius);
    default:
      return Number.isFinite(mark.x + mark.y);
  }
}

function isPlaced({ left, top, width, height }: Frame): boolean {
  return Number.isFinite(left + top + width + height);
}

/** Height of the text of a drawing, px. */
export const TEXT_SIZE = 14;

/**
 * Width of a character on the average, as a share of the height of the text: that of the widest of
 * common fonts.
 */
const CHARACTER = 0.615;

/** About how wide a label will be, px. Charts are made where no font can be asked. */
export function labelWidth(text: string, textSize = TEXT_SIZE): number {
  return CHARACTER * textSize * text.length;
}
