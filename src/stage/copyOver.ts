/** What needs no copy: forms that are there to be used, not to be seen. */
const TOOLS = 'input, select, button, .stage-tools, .film-pane';

/** How a visible element of the page looks, as far as a copy of it goes. */
interface Part {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/**
 * Copies what a person sees in an element: canvases, the grounds and edges of boxes, lines, and every word where it stands. The pen is
 * scaled to CSS pixels and has its origin in the corner of `host`.
 */
export function copyOver(pen: CanvasRenderingContext2D, host: HTMLElement): void {
  const { left, top } = host.getBoundingClientRect();
  copyPart(pen, host, { x: left, y: top });
}

function copyPart(
  pen: CanvasRenderingContext2D,
  part: Element,
  origin: { readonly x: number; readonly y: number },
): void {
  if (part.matches(TOOLS) || !part.checkVisibility()) return;
  const placed = ({ left, top, width, height }: Part): Part => ({
    left: left - origin.x,
    top: top - origin.y,
    width,
    height,
  });
  const style = getComputedStyle(part);
  const box = placed(part.getBoundingClientRect());
  if (part instanceof HTMLCanvasElement) {
    if (part.width > 0 && box.width > 0) pen.drawImage(part, box.left, box.top, box.width, box.height);
    return;
  }
  if (part instanceof SVGLineElement || part instanceof SVGCircleElement) {
    drawLine(pen, part, style);
    return;
  }
  if (part instanceof HTMLElement) drawBox(pen, box, style);
  for (const child of part.childNodes) {
    if (child instanceof Element) copyPart(pen, child, origin);
    else if (child instanceof Text)
      for (const { text, place } of wordsOf(child)) drawWord(pen, text, placed(place), style);
  }
}

function drawBox(pen: CanvasRenderingContext2D, box: Part, style: CSSStyleDeclaration): void {
  const { left, top, width, height } = box;
  pen.beginPath();
  pen.roundRect(left, top, width, height, Number.parseFloat(style.borderTopLeftRadius) || 0);
  pen.fillStyle = groundOf(pen, box, style);
  pen.fill();
  const edge = Number.parseFloat(style.borderRightWidth);
  if (!(edge > 0)) return;
  pen.strokeStyle = style.borderRightColor;
  pen.lineWidth = edge;
  pen.stroke();
}

/** Its colour, or a gradient from left to right in even steps: the bar of a legend. */
function groundOf(
  pen: CanvasRenderingContext2D,
  { left, width }: Part,
  { backgroundColor, backgroundImage }: CSSStyleDeclaration,
): string | CanvasGradient {
  const colours = backgroundImage.startsWith('linear-gradient(to right')
    ? (backgroundImage.match(/rgba?\([^)]*\)/g) ?? [])
    : [];
  if (colours.length < 2) return backgroundColor;
  const gradient = pen.createLinearGradient(left, 0, left + width, 0);
  for (const [i, colour] of colours.entries()) gradient.addColorStop(i / (colours.length - 1), colour);
  return gradient;
}

/** In the coordinates of a drawing that covers the host. */
function drawLine(
  pen: CanvasRenderingContext2D,
  shape: SVGLineElement | SVGCircleElement,
  { stroke, strokeWidth }: CSSStyleDeclaration,
): void {
  pen.beginPath();
  if (shape instanceof SVGLineElement) {
    pen.moveTo(shape.x1.baseVal.value, shape.y1.baseVal.value);
    pen.lineTo(shape.x2.baseVal.value, shape.y2.baseVal.value);
  } else pen.arc(shape.cx.baseVal.value, shape.cy.baseVal.value, shape.r.baseVal.value, 0, 2 * Math.PI);
  pen.strokeStyle = stroke;
  pen.lineWidth = Number.parseFloat(strokeWidth);
  pen.stroke();
}

/** The words of a text with their places on the screen: the page has broken the lines already. */
function wordsOf(node: Text): { text: string; place: Part }[] {
  const range = document.createRange();
  return [...node.data.matchAll(/\S+/g)].map(({ 0: text, index }) => {
    range.setStart(node, index);
    range.setEnd(node, index + text.length);
    return { text, place: range.getBoundingClientRect() };
  });
}

function drawWord(
  pen: CanvasRenderingContext2D,
  text: string,
  { left, top, width }: Part,
  { color, fontStyle, fontWeight, fontSize, fontFamily }: CSSStyleDeclaration,
): void {
  if (width === 0) return;
  pen.font = `${fontStyle} ${fontWeight} ${fontSize} ${fontFamily}`;
  pen.fillStyle = color;
  pen.fillText(text, left, top + pen.measureText(text).fontBoundingBoxAscent);
}
