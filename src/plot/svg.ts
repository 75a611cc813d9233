import { type Colour, colourProperty } from '../ui/look/colours.ts';
import { Markup, markup } from '../ui/markup.ts';
import type { Drawing } from './drawing.ts';
import type { Frame } from './frame.ts';
import { hasPlace, type Label, type Mark, type Point, TEXT_SIZE } from './marks.ts';
import { DASHES, type Fill, type Pen } from './pens.ts';

/** Colours where the page does not say: black on white paper. */
const ON_PAPER: Readonly<Partial<Record<Colour, string>>> = { line: '#ccc', strong: '#777' };

/** A drawing as SVG, to be put into a page or into a document of its own. Its text has 14 px. */
export function svg({ size, description, marks }: Drawing): Markup {
  const view = `0 0 ${round(size.width)} ${round(size.height)}`;
  const font = markup`font-size="${TEXT_SIZE}" fill="currentColor"`;
  return markup`<svg class="drawing" viewBox="${view}" role="img" aria-label="${description}" ${font}>
${written(marks)}
</svg>`;
}

/** One mark to a line. Nothing is written that has no place. */
function written(marks: readonly Mark[]): Markup {
  const lines = marks.flatMap((mark) => (hasPlace(mark) ? [writtenMark(mark).text] : []));
  return new Markup(lines.join('\n'));
}

function writtenMark(mark: Mark): Markup {
  switch (mark.kind) {
    case 'curve':
      return markup`<path d="${mark.runs.map(pathThrough).join('')}" ${look(mark.pen)}/>`;
    case 'point':
      return pointAt(mark);
    case 'shape':
      return markup`<path d="${mark.path}" ${look(undefined, mark.fill)}/>`;
    case 'line':
      return markup`<path d="${pathThrough(mark.points)}" ${look(mark.pen)}/>`;
    case 'box':
      return markup`<rect ${placed(mark.frame)} ${look(mark.pen, mark.fill)}/>`;
    case 'circle':
      return circleAt(mark, look(mark.pen, mark.fill));
    case 'label':
      return labelAt(mark);
    case 'clip':
      return clipped(mark.frame, mark.marks);
  }
}

/** A nested SVG cuts off at its edges. It needs no id, so that a page can hold several drawings. */
function clipped(frame: Frame, marks: readonly Mark[]): Markup {
  const { left, top, width, height } = frame;
  const view = [left, top, width, height].map(round).join(' ');
  return markup`<svg ${placed(frame)} viewBox="${view}">
${written(marks)}
</svg>`;
}

function placed({ left, top, width, height }: Frame): Markup {
  return markup`x="${round(left)}" y="${round(top)}" width="${round(width)}" height="${round(height)}"`;
}

function pointAt({ x, y, symbol, radius, pen }: Point): Markup {
  if (symbol === 'cross') {
    const [left, top, right, foot] = [x - radius, y - radius, x + radius, y + radius];
    const path = pathThrough([left, top, right, foot]) + pathThrough([left, foot, right, top]);
    return markup`<path d="${path}" ${look(pen)}/>`;
  }
  const { colour = 'ink', opacity = 1 } = pen;
  const shown =
    symbol === 'dot' ? look(undefined, { colour, opacity }) : look(pen, { colour: 'ground', opacity });
  return circleAt({ x, y, radius }, shown);
}

function circleAt({ x, y, radius }: Pick<Point, 'x' | 'y' | 'radius'>, shown: Markup): Markup {
  return markup`<circle cx="${round(x)}" cy="${round(y)}" r="${round(radius)}" ${shown}/>`;
}

const BASELINE = 0.36 * TEXT_SIZE;

function labelAt({ x, y, text, align, colour, halo, upward }: Label): Markup {
  const place = upward
    ? markup`transform="translate(${round(x)} ${round(y)}) rotate(-90)" dy="${round(BASELINE)}"`
    : markup`x="${round(x)}" y="${round(y + BASELINE)}"`;
  const inColour = colour === 'ink' ? '' : markup` fill="${colourOf(colour)}"`;
  const around = halo
    ? markup` stroke="${colourOf('ground')}" stroke-width="4" stroke-linejoin="round" paint-order="stroke"`
    : '';
  return markup`<text ${place} text-anchor="${align}"${inColour}${around}>${text}</text>`;
}

function pathThrough(points: readonly number[]): string {
  let path = '';
  for (const [k, value] of points.entries())
    path += `${k % 2 === 1 ? ' ' : k === 0 ? 'M' : 'L'}${round(value)}`;
  return path;
}

/** Attributes that fill and draw an outline. */
function look(pen: Pen | undefined, fill?: Fill): Markup {
  const { opacity: shade = 1 } = fill ?? {};
  const shaded = shade === 1 ? '' : markup` fill-opacity="${shade}"`;
  const ground = markup`fill="${fill ? colourOf(fill.colour) : 'none'}"${shaded}`;
  if (!pen) return ground;
  const { colour = 'ink', width = 1, dash = 'solid', opacity = 1 } = pen;
  const dashes = dash === 'solid' ? '' : markup` stroke-dasharray="${DASHES[dash].join(' ')}"`;
  const faint = opacity === 1 ? '' : markup` stroke-opacity="${opacity}"`;
  const line = markup`stroke="${colourOf(colour)}" stroke-width="${width}" stroke-linejoin="round"`;
  return markup`${ground} ${line}${dashes}${faint}`;
}

function colourOf(colour: Colour): string {
  if (colour === 'ink') return 'currentColor';
  // The page says what its drawings lie on.
  if (colour === 'ground') return 'var(--paper, #fff)';
  return `var(${colourProperty(colour)}, ${ON_PAPER[colour] ?? '#000'})`;
}

/** To a hundredth of a pixel. */
function round(value: number): number {
  return Math.round(value * 100) / 100 + 0;
}
