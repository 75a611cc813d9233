import type { CoilForce } from '../../../shared/axis/flux/coilForces.ts';
import type { MotorFlux } from '../../../shared/axis/flux/motorFlux.ts';
import { at } from '../../../shared/core/at.ts';
import { fixed, ranged } from '../../../shared/core/format.ts';
import { cssColour } from '../../ui/look/colours.ts';
import type { FluxLines, FluxState } from './fluxLines.ts';
import type { Section } from './section.ts';

/** What the picture shows; lengths in m, forces in N, currents in A. */
export interface SectionView {
  readonly section: Section;
  readonly lines: FluxLines;
  readonly state: FluxState;
  readonly flux: MotorFlux;
  readonly coils: readonly CoilForce[];
  readonly phases: readonly string[];
  readonly fullForce: number;
  readonly fullCurrent: number;
  /** Full scale of the wave, T; the field of the currents as a share of it, at a distance from the left edge. */
  readonly fullWave: number;
  readonly wave: (x: number) => number;
}

/** Heights above and below the section, in letters. */
const ARROWS = 3;
const WAVE = 4;

/** Metres across the picture of a canvas of this size, px, for letters of this size. */
export function pictureScale(section: Section, width: number, height: number, rem: number, least: number) {
  const space = height - (ARROWS + WAVE) * rem;
  const scale = Math.max(Math.min(space / (section.high - section.low), width / least), 1);
  return { scale, metres: width / scale };
}

/** Draws the section, with the force of each coil above it and the wave of the currents below it. */
export function drawSection(
  pen: CanvasRenderingContext2D,
  width: number,
  height: number,
  rem: number,
  scale: number,
  view: SectionView,
): void {
  const { section } = view;
  const ink = cssColour('--ink');
  const soft = cssColour('--ink-soft');
  const tall = (section.high - section.low) * scale;
  const deep = tall + (ARROWS + WAVE) * rem;
  const yOf = (y: number) => ARROWS * rem + tall - (y - section.low) * scale;
  const xOf = (x: number) => width / 2 + x * scale;
  pen.clearRect(0, 0, width, height);
  pen.save();
  pen.translate(0, Math.max((height - deep) / 2, 0));
  pen.lineJoin = 'round';

  for (const { low, high } of section.iron)
    hatched(pen, 0, yOf(high), width, (high - low) * scale, rem, soft);
  drawMagnets(pen, width, rem, scale, view, yOf, ink);

  const { low, high } = section.field;
  pen.strokeStyle = ink;
  pen.lineWidth = 0.075 * rem;
  pen.beginPath();
  const bottom = yOf(low);
  const fieldHeight = (high - low) * scale;
  view.lines.trace(view.state, (x1, y1, x2, y2) => {
    pen.moveTo(x1 * width, bottom - y1 * fieldHeight);
    pen.lineTo(x2 * width, bottom - y2 * fieldHeight);
  });
  pen.stroke();

  drawCoils(pen, rem, scale, view, xOf, yOf);
  drawForces(pen, rem, scale, view, xOf);
  drawWave(pen, width, deep, rem, scale, view);
  caption(pen, `Force of each coil, full length ${ranged(view.fullForce, 'N', 2)}`, 0.65 * rem, rem);
  caption(pen, `Field of the currents, ±${fixed(view.fullWave, 'mT', 0)}`, deep - (WAVE - 0.65) * rem, rem);
  pen.restore();
}

/** At the left edge, on a ground of its own. */
function caption(pen: CanvasRenderingContext2D, text: string, y: number, rem: number): void {
  pen.font = `${0.875 * rem}px ${getComputedStyle(document.body).fontFamily}`;
  pen.textAlign = 'left';
  pen.textBaseline = 'middle';
  pen.globalAlpha = 0.85;
  pen.fillStyle = cssColour('--panel');
  pen.fillRect(0, y - 0.6 * rem, pen.measureText(text).width + 0.5 * rem, 1.2 * rem);
  pen.globalAlpha = 1;
  pen.fillStyle = cssColour('--ink-soft');
  pen.fillText(text, 0.15 * rem, y);
}

/** Iron: sparse, thin lines at 45°. */
function hatched(
  pen: CanvasRenderingContext2D,
  x: number,
  y: number,
  width: number,
  height: number,
  rem: number,
  colour: string,
): void {
  pen.save();
  pen.beginPath();
  pen.rect(x, y, width, height);
  pen.clip();
  pen.strokeStyle = colour;
  pen.globalAlpha = 0.45;
  pen.lineWidth = 0.05 * rem;
  pen.beginPath();
  for (let start = x - height; start < x + width; start += 0.7 * rem) {
    pen.moveTo(start, y + height);
    pen.lineTo(start + height, y);
  }
  pen.stroke();
  pen.globalAlpha = 0.8;
  pen.lineWidth = 0.08 * rem;
  pen.strokeRect(x - rem, y, width + 2 * rem, height);
  pen.restore();
}

/** Each magnet with the letters of its poles; north poles lie on a darker ground. */
function drawMagnets(
  pen: CanvasRenderingContext2D,
  width: number,
  rem: number,
  scale: number,
  { section, state, flux }: SectionView,
  yOf: (y: number) => number,
  ink: string,
): void {
  const { rows, shaft } = section;
  const { polePitch, share } = flux;
  const first = Math.floor(state.left / polePitch) - 1;
  const last = Math.ceil((state.left + width / scale) / polePitch) + 1;
  pen.strokeStyle = ink;
  pen.lineWidth = 0.09 * rem;
  for (let pole = first; pole <= last; pole++) {
    const x = (pole * polePitch - state.left) * scale;
    const north = pole % 2 === 0;
    const length = share * polePitch * scale;
    for (const { low, high } of rows) {
      const box: Box = [x - length / 2, yOf(high), length, (high - low) * scale];
      // The rear row of a channel shows the other pole to the blade.
      magnet(pen, box, low < 0 || rows.length === 1 ? north : !north, rem, ink);
    }
    if (!shaft) continue;
    const start = x + ((1 - share) / 2) * polePitch * scale;
    const tall = (shaft.high - shaft.low) * scale;
    magnet(pen, [start, yOf(shaft.high), length / 2, tall], north, rem, ink);
    magnet(pen, [start + length / 2, yOf(shaft.high), length / 2, tall], !north, rem, ink);
  }
}

type Box = readonly [x: number, y: number, width: number, height: number];

function magnet(pen: CanvasRenderingContext2D, box: Box, north: boolean, rem: number, ink: string): void {
  const [x, y, width, height] = box;
  pen.fillStyle = ink;
  pen.globalAlpha = north ? 0.26 : 0.06;
  pen.fillRect(x, y, width, height);
  pen.globalAlpha = 1;
  pen.strokeRect(x, y, width, height);
  if (width < 1.1 * rem) return;
  lettered(pen, north ? 'N' : 'S', x + width / 2, y + height / 2, Math.min(1.3 * rem, 0.9 * height), rem);
}

/** A letter on a plate of its own, so that no line crosses it. */
function lettered(
  pen: CanvasRenderingContext2D,
  text: string,
  x: number,
  y: number,
  size: number,
  rem: number,
): void {
  pen.font = `650 ${Math.max(size, 0.875 * rem)}px ${getComputedStyle(document.body).fontFamily}`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.lineWidth = 0.3 * rem;
  const [stroke, fill] = [pen.strokeStyle, cssColour('--ink')];
  pen.strokeStyle = cssColour('--panel');
  pen.strokeText(text, x, y);
  pen.fillStyle = fill;
  pen.fillText(text, x, y);
  pen.strokeStyle = stroke;
  pen.lineWidth = 0.09 * rem;
}

/** Copper, with the letter of the phase and the direction of its current: a point comes out, a cross goes in. */
function drawCoils(
  pen: CanvasRenderingContext2D,
  rem: number,
  scale: number,
  { section, coils, phases, fullCurrent }: SectionView,
  xOf: (x: number) => number,
  yOf: (y: number) => number,
): void {
  const colour = cssColour('--q-current');
  for (const { coil, x, width, low, high, sense } of section.sides) {
    const box: Box = [xOf(x - width / 2), yOf(high), width * scale, (high - low) * scale];
    pen.fillStyle = cssColour('--panel');
    pen.globalAlpha = 0.82;
    pen.fillRect(...box);
    pen.globalAlpha = 1;
    pen.strokeStyle = colour;
    pen.lineWidth = 0.1 * rem;
    pen.strokeRect(...box);
    const share = (sense * at(coils, coil).current) / fullCurrent;
    const room = Math.min(box[2], box[3]);
    const isTall = box[3] > 1.9 * rem && box[2] > 0.8 * rem;
    const isWide = !isTall && box[2] > 1.7 * rem;
    const cx = box[0] + box[2] * (isWide ? 0.7 : 0.5);
    const cy = box[1] + box[3] * (isTall ? 0.68 : 0.5);
    if (isTall) lettered(pen, at(phases, coil), cx, box[1] + 0.27 * box[3], 0.9 * rem, rem);
    if (isWide) lettered(pen, at(phases, coil), box[0] + 0.27 * box[2], cy, 0.9 * rem, rem);
    mark(pen, cx, cy, 0.42 * Math.min(room, 1.8 * rem) * Math.sqrt(Math.min(Math.abs(share), 1)), share > 0);
  }
}

function mark(pen: CanvasRenderingContext2D, x: number, y: number, r: number, out: boolean): void {
  if (r < 1) return;
  pen.strokeStyle = pen.fillStyle = cssColour('--q-current');
  pen.beginPath();
  pen.arc(x, y, r, 0, 2 * Math.PI);
  if (!out) {
    const d = r * Math.SQRT1_2;
    pen.moveTo(x - d, y - d);
    pen.lineTo(x + d, y + d);
    pen.moveTo(x - d, y + d);
    pen.lineTo(x + d, y - d);
  }
  pen.stroke();
  if (!out) return;
  pen.beginPath();
  pen.arc(x, y, 0.35 * r, 0, 2 * Math.PI);
  pen.fill();
}

function drawForces(
  pen: CanvasRenderingContext2D,
  rem: number,
  scale: number,
  { section, coils, fullForce }: SectionView,
  xOf: (x: number) => number,
): void {
  const y = (ARROWS - 0.95) * rem;
  pen.strokeStyle = pen.fillStyle = cssColour('--q-force');
  pen.lineWidth = 0.22 * rem;
  coils.forEach(({ force }, coil) => {
    const from = xOf((coil - (section.coils - 1) / 2) * section.coilPitch);
    const length = (force / fullForce) * 0.94 * section.coilPitch * scale;
    pen.globalAlpha = 0.35;
    pen.fillRect(from - 0.05 * rem, y - 0.6 * rem, 0.1 * rem, 1.2 * rem);
    pen.globalAlpha = 1;
    if (Math.abs(length) < 1) return;
    const head = Math.sign(length) * Math.min(0.55 * rem, Math.abs(length));
    pen.beginPath();
    pen.moveTo(from, y);
    pen.lineTo(from + length - head, y);
    pen.stroke();
    pen.beginPath();
    pen.moveTo(from + length, y);
    pen.lineTo(from + length - head, y - 0.45 * rem);
    pen.lineTo(from + length - head, y + 0.45 * rem);
    pen.fill();
  });
}

function drawWave(
  pen: CanvasRenderingContext2D,
  width: number,
  height: number,
  rem: number,
  scale: number,
  { wave }: SectionView,
): void {
  const half = 1.25 * rem;
  const zero = height - 1.35 * rem;
  pen.strokeStyle = cssColour('--line-strong');
  pen.lineWidth = 0.06 * rem;
  pen.beginPath();
  pen.moveTo(0, zero);
  pen.lineTo(width, zero);
  pen.stroke();
  pen.strokeStyle = cssColour('--q-current');
  pen.lineWidth = 0.16 * rem;
  pen.beginPath();
  for (let x = 0; x <= width; x += 4) pen.lineTo(x, zero - half * wave(x / scale));
  pen.stroke();
}
