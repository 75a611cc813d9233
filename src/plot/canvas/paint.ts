import { at } from '../../../shared/core/at.ts';
import { hasPlace, type Label, type Mark, type Point } from '../marks.ts';
import { DASHES, type Fill, type Pen } from '../pens.ts';
import { clipped } from './canvas.ts';
import type { Theme } from './theme.ts';

type Context = CanvasRenderingContext2D;

/**
 * Paints marks on a canvas that is drawn on in CSS pixels, in the colours and the font of the page.
 */
export function paint(context: Context, theme: Theme, marks: readonly Mark[]): void {
  context.font = theme.font;
  context.textBaseline = 'middle';
  context.lineJoin = 'round';
  for (const mark of marks) if (hasPlace(mark)) paintMark(context, theme, mark);
}

function paintMark(context: Context, theme: Theme, mark: Mark): void {
  switch (mark.kind) {
    case 'curve':
      context.beginPath();
      for (const run of mark.runs) addPath(context, run);
      stroke(context, theme, mark.pen);
      break;
    case 'point':
      paintPoint(context, theme, mark);
      break;
    case 'shape':
      fill(context, theme, mark.fill, new Path2D(mark.path));
      break;
    case 'line':
      context.beginPath();
      addPath(context, crisp(mark.points, mark.pen));
      stroke(context, theme, mark.pen);
      break;
    case 'box': {
      const { left, top, width, height } = mark.frame;
      context.beginPath();
      context.rect(left, top, width, height);
      outline(context, theme, mark.fill, mark.pen);
      break;
    }
    case 'circle':
      context.beginPath();
      context.arc(mark.x, mark.y, mark.radius, 0, 2 * Math.PI);
      outline(context, theme, mark.fill, mark.pen);
      break;
    case 'label':
      paintLabel(context, theme, mark);
      break;
    case 'clip':
      clipped(context, mark.frame, () => paint(context, theme, mark.marks));
      break;
  }
}

function paintPoint(context: Context, theme: Theme, { x, y, symbol, radius, pen }: Point): void {
  context.beginPath();
  if (symbol === 'cross') {
    addPath(context, [x - radius, y - radius, x + radius, y + radius]);
    addPath(context, [x - radius, y + radius, x + radius, y - radius]);
    stroke(context, theme, pen);
    return;
  }
  context.arc(x, y, radius, 0, 2 * Math.PI);
  const { colour = 'ink', opacity = 1 } = pen;
  if (symbol === 'dot') fill(context, theme, { colour, opacity });
  else outline(context, theme, { colour: 'ground', opacity }, pen);
}

function paintLabel(
  context: Context,
  theme: Theme,
  { x, y, text, align, colour, halo, upward }: Label,
): void {
  context.save();
  context.translate(x, y);
  if (upward) context.rotate(-Math.PI / 2);
  context.textAlign = align === 'middle' ? 'center' : align;
  if (halo) {
    context.lineWidth = 4;
    context.strokeStyle = theme.colour('ground');
    context.strokeText(text, 0, 0);
  }
  context.fillStyle = theme.colour(colour);
  context.fillText(text, 0, 0);
  context.restore();
}

function addPath(context: Context, points: readonly number[]): void {
  for (let k = 0; k + 1 < points.length; k += 2) {
    const [x, y] = [at(points, k), at(points, k + 1)];
    if (k === 0) context.moveTo(x, y);
    else context.lineTo(x, y);
  }
}

/** A thin upright or level line covers whole pixels instead of half of two. */
function crisp(points: readonly number[], { width = 1 }: Pen): readonly number[] {
  const [x1, y1, x2, y2, ...more] = points;
  if (width !== 1 || y2 === undefined || more.length > 0) return points;
  if (x1 === x2) return points.map((value, k) => (k % 2 === 0 ? Math.floor(value) + 0.5 : value));
  if (y1 === y2) return points.map((value, k) => (k % 2 === 1 ? Math.floor(value) + 0.5 : value));
  return points;
}

function outline(context: Context, theme: Theme, inside: Fill | undefined, pen: Pen | undefined): void {
  if (inside) fill(context, theme, inside);
  if (pen) stroke(context, theme, pen);
}

function fill(context: Context, theme: Theme, { colour, opacity = 1 }: Fill, path?: Path2D): void {
  context.globalAlpha = opacity;
  context.fillStyle = theme.colour(colour);
  if (path) context.fill(path);
  else context.fill();
  context.globalAlpha = 1;
}

function stroke(
  context: Context,
  theme: Theme,
  { colour = 'ink', width = 1, dash = 'solid', opacity = 1 }: Pen,
): void {
  context.globalAlpha = opacity;
  context.strokeStyle = theme.colour(colour);
  context.lineWidth = width;
  context.setLineDash(DASHES[dash]);
  context.stroke();
  context.setLineDash([]);
  context.globalAlpha = 1;
}
