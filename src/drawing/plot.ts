import { Markup, markup } from './markup.ts';

/** From a value to where it is drawn, and the values it is drawn between. */
export interface Scale {
  readonly from: number;
  readonly to: number;
  at(value: number): number;
}

export function linearScale(from: number, to: number, start: number, end: number): Scale {
  return { from, to, at: (value) => start + ((value - from) / (to - from)) * (end - start) };
}

export function logScale(from: number, to: number, start: number, end: number): Scale {
  const line = linearScale(Math.log10(from), Math.log10(to), start, end);
  return { from, to, at: (value) => line.at(Math.log10(value)) };
}

/** A rectangle of a drawing in which curves are drawn. */
export interface Frame {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

export function clip(id: string, { left, top, width, height }: Frame): Markup {
  return markup`<clipPath id="${id}"><rect x="${left}" y="${top}" width="${width}" height="${height}"/></clipPath>`;
}

export function border({ left, top, width, height }: Frame): Markup {
  return markup`<rect x="${left}" y="${top}" width="${width}" height="${height}" fill="none" stroke="#000"/>`;
}

export function line(x1: number, y1: number, x2: number, y2: number, style: Style): Markup {
  return markup`<path d="M${near(x1)} ${near(y1)}L${near(x2)} ${near(y2)}" ${strokeOf(style)}/>`;
}

export function circle(x: number, y: number, radius: number, style: Style): Markup {
  return markup`<circle cx="${near(x)}" cy="${near(y)}" r="${near(radius)}" ${strokeOf(style)}/>`;
}

export function dot(x: number, y: number): Markup {
  return markup`<circle cx="${near(x)}" cy="${near(y)}" r="3.5"/>`;
}

export function label(
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Markup {
  return markup`<text x="${near(x)}" y="${near(y)}" text-anchor="${anchor}">${words}</text>`;
}

/** A label that reads upwards, its middle at x, y. */
export function upwardLabel(x: number, y: number, words: string): Markup {
  return markup`<text transform="translate(${near(x)} ${near(y)}) rotate(-90)" text-anchor="middle">${words}</text>`;
}

/** A label that stays readable on top of curves. */
export function labelOnWhite(
  x: number,
  y: number,
  words: string,
  anchor: 'start' | 'middle' | 'end' = 'start',
): Markup {
  return markup`<text x="${near(x)}" y="${near(y)}" text-anchor="${anchor}" stroke="#fff" stroke-width="4" paint-order="stroke">${words}</text>`;
}

export type Style = 'grid' | 'reference' | 'curve' | 'dashed' | 'marker';

const STROKES: Readonly<Record<Style, string>> = {
  grid: 'stroke="#ccc"',
  reference: 'stroke="#000" stroke-dasharray="2 3"',
  curve: 'stroke="#000" stroke-width="2" stroke-linejoin="round"',
  dashed: 'stroke="#000" stroke-width="1.5" stroke-dasharray="7 4" stroke-linejoin="round"',
  marker: 'stroke="#000" stroke-width="3"',
};

function strokeOf(style: Style): Markup {
  return new Markup(`fill="none" ${STROKES[style]}`);
}

/** Nearer than this, px, the next point is left out: paper shows no more. */
const NEAREST = 0.4;

/** A curve through points, cut off at its clip. */
export function curve(
  count: number,
  x: (k: number) => number,
  y: (k: number) => number,
  clipId: string,
  style: Style,
): Markup {
  let path = '';
  let [lastX, lastY] = [Number.NaN, Number.NaN];
  for (let k = 0; k < count; k++) {
    const [px, py] = [bounded(x(k)), bounded(y(k))];
    if (Number.isNaN(px + py)) continue;
    const isNear = Math.hypot(px - lastX, py - lastY) < NEAREST;
    if (isNear && k < count - 1) continue;
    path += `${path === '' ? 'M' : 'L'}${near(px)} ${near(py)}`;
    [lastX, lastY] = [px, py];
  }
  return markup`<path d="${path}" clip-path="url(#${clipId})" ${strokeOf(style)}/>`;
}

/** Far outside any drawing, yet a number that every renderer takes. */
function bounded(value: number): number {
  return Math.min(Math.max(value, -1e5), 1e5);
}

/** To a hundredth of a pixel. */
function near(value: number): number {
  return Math.round(value * 100) / 100;
}
