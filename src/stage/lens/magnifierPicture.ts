import type { ErrorTrail } from './errorTrail.ts';

/** What the lens shows, SI. */
interface LensView {
  readonly followingError: number;
  readonly toolError: number;
  readonly window: number;
  readonly inclination: number;
  readonly time: number;
  /** Length of the scale bar, m, its text, and how many of the lens's radii a metre is. */
  readonly bar: number;
  readonly barText: string;
  readonly radiiPerMetre: number;
}

export interface LensColours {
  readonly glass: string;
  readonly ink: string;
  readonly line: string;
  readonly setpoint: string;
  readonly position: string;
  readonly error: string;
  readonly table: string;
  readonly tableLine: string;
}

/** Share of the lens above the seam, where the table shows; below it the past second falls away. */
const SEAM = 0.02;

/**
 * The lens: the place where the table should be, the table's edge where it is, and the error of the last second running
 * down from it. The picture is turned with the axis; `size` in pixels of the canvas.
 */
export function drawLens(
  pen: CanvasRenderingContext2D,
  size: number,
  rem: number,
  view: LensView,
  trail: ErrorTrail,
  span: number,
  colours: LensColours,
): void {
  const r = size / 2;
  const rim = Math.max(0.09 * rem, 1.5);
  const scale = view.radiiPerMetre * r;
  pen.clearRect(0, 0, size, size);
  pen.save();
  pen.beginPath();
  pen.arc(r, r, r - rim, 0, 2 * Math.PI);
  pen.clip();
  pen.fillStyle = colours.glass;
  pen.fillRect(0, 0, size, size);
  pen.translate(r, r);
  pen.rotate(-view.inclination);

  const band = Math.min(view.window * scale, 2 * r);
  pen.fillStyle = colours.setpoint;
  pen.globalAlpha = 0.1;
  pen.fillRect(-band, -r, 2 * band, 2 * r);
  pen.globalAlpha = 0.45;
  pen.setLineDash([0.3 * rem, 0.3 * rem]);
  stroke(pen, colours.setpoint, 0.07 * rem, -band, -r, -band, r);
  stroke(pen, colours.setpoint, 0.07 * rem, band, -r, band, r);
  pen.setLineDash([]);
  pen.globalAlpha = 1;

  const edge = clamp(-view.followingError * scale, 1.2 * r);
  drawTable(pen, r, edge, rem, colours);
  stroke(pen, colours.glass, 0.36 * rem, 0, -r, 0, r);
  stroke(pen, colours.setpoint, 0.16 * rem, 0, -r, 0, r);
  drawTrail(pen, r, rem, scale, view, trail, span, colours);
  stroke(pen, colours.position, 0.2 * rem, edge, -r, edge, SEAM * r);
  if (Math.abs(edge) > 0.5 * rem) arrow(pen, 0, edge, -0.3 * r, rem, colours.error);
  drawTool(pen, r, rem, -view.toolError * scale, colours);
  pen.restore();

  drawBar(pen, r, rem, scale, view, colours);
  pen.strokeStyle = colours.line;
  pen.lineWidth = 2 * rim;
  pen.beginPath();
  pen.arc(r, r, r - rim, 0, 2 * Math.PI);
  pen.stroke();
}

function drawTable(
  pen: CanvasRenderingContext2D,
  r: number,
  edge: number,
  rem: number,
  colours: LensColours,
) {
  pen.save();
  pen.beginPath();
  pen.rect(edge, -1.2 * r, 2.4 * r, (1.2 + SEAM) * r);
  pen.clip();
  pen.fillStyle = colours.table;
  pen.fillRect(-2 * r, -2 * r, 4 * r, 4 * r);
  // Grinding marks that move with the table.
  pen.globalAlpha = 0.5;
  const step = 1.1 * rem;
  for (let x = edge + step; x < 1.2 * r; x += step)
    stroke(pen, colours.tableLine, 0.06 * rem, x, -1.2 * r, x, SEAM * r);
  pen.restore();
}

function drawTrail(
  pen: CanvasRenderingContext2D,
  r: number,
  rem: number,
  scale: number,
  { time, followingError }: LensView,
  trail: ErrorTrail,
  span: number,
  colours: LensColours,
) {
  const depth = (0.98 - SEAM) * r;
  pen.lineJoin = 'round';
  pen.strokeStyle = colours.error;
  pen.lineWidth = 0.15 * rem;
  // The afterglow fades in steps: one path for each tenth of the span.
  let [x, y] = [clamp(-followingError * scale, 1.5 * r), SEAM * r];
  let tenth = 0;
  const begin = () => {
    pen.beginPath();
    pen.moveTo(x, y);
    pen.globalAlpha = 0.95 - 0.08 * tenth;
  };
  begin();
  trail.each(time, (age, error) => {
    const [nx, ny] = [clamp(-error * scale, 1.5 * r), SEAM * r + (age / span) * depth];
    pen.lineTo(nx, ny);
    [x, y] = [nx, ny];
    const now = Math.min(Math.floor((10 * age) / span), 9);
    if (now === tenth) return;
    pen.stroke();
    tenth = now;
    begin();
  });
  pen.stroke();
  pen.globalAlpha = 1;
}

/** A diamond where the tool is; where that lies outside the lens, an arrow head at the rim points to it. */
function drawTool(pen: CanvasRenderingContext2D, r: number, rem: number, x: number, colours: LensColours) {
  const y = SEAM * r;
  const s = 0.34 * rem;
  const limit = 0.93 * r;
  pen.fillStyle = colours.glass;
  pen.strokeStyle = colours.ink;
  pen.lineWidth = 0.12 * rem;
  pen.beginPath();
  if (Math.abs(x) <= limit) {
    pen.moveTo(x, y - s);
    pen.lineTo(x + s, y);
    pen.lineTo(x, y + s);
    pen.lineTo(x - s, y);
  } else {
    const side = Math.sign(x);
    pen.moveTo(side * limit, y);
    pen.lineTo(side * (limit - 1.5 * s), y - s);
    pen.lineTo(side * (limit - 1.5 * s), y + s);
  }
  pen.closePath();
  pen.fill();
  pen.stroke();
}

function drawBar(
  pen: CanvasRenderingContext2D,
  r: number,
  rem: number,
  scale: number,
  { bar, barText, inclination }: LensView,
  colours: LensColours,
) {
  const length = bar * scale;
  const y = 0.74 * r;
  pen.save();
  pen.translate(r, r);
  pen.rotate(-inclination);
  pen.lineCap = 'butt';
  for (const [colour, width] of [
    [colours.glass, 0.5 * rem],
    [colours.ink, 0.17 * rem],
  ] as const) {
    stroke(pen, colour, width, -length / 2, y, length / 2, y);
    for (const end of [-length / 2, length / 2])
      stroke(pen, colour, width, end, y - 0.3 * rem, end, y + 0.3 * rem);
  }
  pen.restore();
  // The text stays upright, beyond the bar.
  const off = y - 0.95 * rem;
  const [tx, ty] = [r + off * Math.sin(inclination), r + off * Math.cos(inclination)];
  pen.font = `600 ${rem}px system-ui, sans-serif`;
  pen.textAlign = 'center';
  pen.textBaseline = 'middle';
  pen.lineJoin = 'round';
  pen.strokeStyle = colours.glass;
  pen.lineWidth = 0.35 * rem;
  pen.strokeText(barText, tx, ty);
  pen.fillStyle = colours.ink;
  pen.fillText(barText, tx, ty);
}

function arrow(
  pen: CanvasRenderingContext2D,
  from: number,
  to: number,
  y: number,
  rem: number,
  colour: string,
) {
  const s = Math.min(0.4 * rem, 0.6 * Math.abs(to - from)) * Math.sign(to - from);
  stroke(pen, colour, 0.16 * rem, from, y, to - 0.6 * s, y);
  pen.fillStyle = colour;
  pen.beginPath();
  pen.moveTo(to, y);
  pen.lineTo(to - s, y - 0.55 * Math.abs(s));
  pen.lineTo(to - s, y + 0.55 * Math.abs(s));
  pen.fill();
}

function stroke(
  pen: CanvasRenderingContext2D,
  colour: string,
  width: number,
  x1: number,
  y1: number,
  x2: number,
  y2: number,
) {
  pen.strokeStyle = colour;
  pen.lineWidth = width;
  pen.beginPath();
  pen.moveTo(x1, y1);
  pen.lineTo(x2, y2);
  pen.stroke();
}

function clamp(x: number, limit: number): number {
  return Math.min(Math.max(x, -limit), limit);
}
