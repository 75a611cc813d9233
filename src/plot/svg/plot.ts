import { type Markup, markup } from '../../ui/markup.ts';

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

/** Width and height of a drawing, px at its natural size. */
export interface Size {
  readonly width: number;
  readonly height: number;
}

/** A drawing of its own, with words for whoever cannot see it. Its texts have 14 px and the colour of the text around it. */
export function drawing({ width, height }: Size, text: string, content: Markup | readonly Markup[]): Markup {
  return markup`<svg class="drawing" viewBox="0 0 ${near(width)} ${near(height)}" role="img" aria-label="${text}" font-size="14" fill="currentColor">
${content}
</svg>`;
}

/** What is cut off at a frame. It needs no id, so that several drawings can stand on a page. */
export function clipped({ left, top, width, height }: Frame, content: Markup | readonly Markup[]): Markup {
  const [x, y, w, h] = [left, top, width, height].map(near) as [number, number, number, number];
  return markup`<svg x="${x}" y="${y}" width="${w}" height="${h}" viewBox="${x} ${y} ${w} ${h}">${content}</svg>`;
}

/** The ground that drawings stand on: of the page, or white paper. */
const PAPER = 'var(--paper, #fff)';

/** How a line is drawn. */
export interface Pen {
  /** That of the text unless stated. */
  readonly colour?: string;
  readonly width?: number;
  /** Lengths of dash and gap, px. */
  readonly dash?: string;
  /** 0 to 1. */
  readonly opacity?: number;
}

const STYLES = {
  grid: { opacity: 0.2 },
  reference: { dash: '2 3' },
  curve: { width: 2 },
  dashed: { width: 1.5, dash: '7 4' },
  marker: { width: 3 },
} as const satisfies Record<string, Pen>;

export type Style = keyof typeof STYLES;

function strokeOf(pen: Style | Pen): Markup {
  const {
    colour = 'currentColor',
    width = 1,
    dash,
    opacity,
  }: Pen = typeof pen === 'string' ? STYLES[pen] : pen;
  const dashes = dash === undefined ? '' : markup` stroke-dasharray="${dash}"`;
  const shine = opacity === undefined ? '' : markup` stroke-opacity="${opacity}"`;
  return markup`fill="none" stroke="${colour}" stroke-width="${width}" stroke-linejoin="round"${dashes}${shine}`;
}

export function border({ left, top, width, height }: Frame): Markup {
  return markup`<rect x="${near(left)}" y="${near(top)}" width="${near(width)}" height="${near(height)}" ${strokeOf({})}/>`;
}

export function line(x1: number, y1: number, x2: number, y2: number, pen: Style | Pen): Markup {
  return markup`<path d="M${near(x1)} ${near(y1)}L${near(x2)} ${near(y2)}" ${strokeOf(pen)}/>`;
}

export function circle(x: number, y: number, radius: number, pen: Style | Pen): Markup {
  return markup`<circle cx="${near(x)}" cy="${near(y)}" r="${near(radius)}" ${strokeOf(pen)}/>`;
}

export function dot(x: number, y: number, radius = 3.5, colour = 'currentColor'): Markup {
  return markup`<circle cx="${near(x)}" cy="${near(y)}" r="${near(radius)}" fill="${colour}"/>`;
}

/** A filled rectangle, such as a band of what is allowed. */
export function area({ left, top, width, height }: Frame, colour: string, opacity: number): Markup {
  return markup`<rect x="${near(left)}" y="${near(top)}" width="${near(width)}" height="${near(height)}" fill="${colour}" fill-opacity="${opacity}"/>`;
}

type Anchor = 'start' | 'middle' | 'end';

export function textAt(x: number, y: number, text: string, anchor: Anchor = 'start'): Markup {
  return markup`<text x="${near(x)}" y="${near(y)}" text-anchor="${anchor}">${text}</text>`;
}

/** A label that reads upwards, its middle at x, y. */
export function upwardLabel(x: number, y: number, text: string): Markup {
  return markup`<text transform="translate(${near(x)} ${near(y)}) rotate(-90)" text-anchor="middle">${text}</text>`;
}

/** A label that stays readable on top of curves. */
export function labelOnWhite(x: number, y: number, text: string, anchor: Anchor = 'start'): Markup {
  return markup`<text x="${near(x)}" y="${near(y)}" text-anchor="${anchor}" stroke="${PAPER}" stroke-width="4" paint-order="stroke">${text}</text>`;
}

/** Width of a character of a label on the average, px: as wide as the widest of common fonts. */
const CHARACTER = 8.6;

/** About how wide a label will be, px. Drawings are made where no font can be asked. */
export function labelWidth(text: string): number {
  return CHARACTER * text.length;
}

/** Nearer than this, px, the next point is left out: paper shows no more. */
const NEAREST = 0.4;

/** A curve through points; those that are no numbers are left out. */
export function curve(
  count: number,
  x: (k: number) => number,
  y: (k: number) => number,
  pen: Style | Pen,
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
  return markup`<path d="${path}" ${strokeOf(pen)}/>`;
}

/** Far outside any drawing, yet a number that every renderer takes. */
function bounded(value: number): number {
  return Math.min(Math.max(value, -1e5), 1e5);
}

/** To a hundredth of a pixel. */
export function near(value: number): number {
  return Math.round(value * 100) / 100;
}
