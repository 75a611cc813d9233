import type { LoopAnalysis } from '../../shared/analysis.ts';
import type { Area } from '../charts/plot.ts';
import type { Theme } from '../charts/theme.ts';

/** What is seen of the plane: −1 stands in the middle, two to each side. */
const CENTRE = -1;
const REACH = 2;

/** L in the complex plane about −1, with the unit circle and the circle that the modulus margin keeps free. */
export function drawNyquist(
  context: CanvasRenderingContext2D,
  theme: Theme,
  area: Area,
  analysis: LoopAnalysis,
  pinned: LoopAnalysis | null,
): void {
  const scale = Math.min(area.width, area.height) / (2 * REACH);
  const x = (re: number) => area.left + area.width / 2 + (re - CENTRE) * scale;
  const y = (im: number) => area.top + area.height / 2 - im * scale;
  context.fillStyle = theme.plot;
  context.fillRect(area.left, area.top, area.width, area.height);
  context.save();
  context.beginPath();
  context.rect(area.left, area.top, area.width, area.height);
  context.clip();
  context.lineWidth = 1;
  context.strokeStyle = theme.line;
  for (const line of [
    [area.left, y(0), area.left + area.width, y(0)],
    [x(0), area.top, x(0), area.top + area.height],
  ] as const) {
    context.beginPath();
    context.moveTo(line[0], line[1]);
    context.lineTo(line[2], line[3]);
    context.stroke();
  }
  circle(context, x(0), y(0), scale, theme.strong, [3, 3]);
  circle(context, x(-1), y(0), scale * analysis.figures.modulusMargin.value, theme.quantity('error'), []);
  if (pinned) trace(context, pinned, x, y, theme.accent, true);
  trace(context, analysis, x, y, theme.accent, false);
  context.fillStyle = theme.quantity('error');
  context.beginPath();
  context.arc(x(-1), y(0), 3.5, 0, 2 * Math.PI);
  context.fill();
  context.restore();
  context.font = `600 ${theme.font}`;
  context.fillStyle = theme.ink;
  context.textAlign = 'left';
  context.textBaseline = 'top';
  context.fillText('Nyquist', area.left + 5, area.top + 3);
  context.font = theme.font;
  context.fillStyle = theme.soft;
  context.fillText('−1', x(-1) + 6, y(0) + 4);
}

function trace(
  context: CanvasRenderingContext2D,
  { nyquistRe, nyquistIm }: LoopAnalysis,
  x: (re: number) => number,
  y: (im: number) => number,
  colour: string,
  ghost: boolean,
): void {
  const near = (value: number) => Math.min(Math.max(value, -100), 100);
  context.strokeStyle = colour;
  context.lineWidth = ghost ? 1.5 : 2;
  context.globalAlpha = ghost ? 0.4 : 1;
  context.beginPath();
  for (let k = 0; k < nyquistRe.length; k++) context.lineTo(x(near(nyquistRe[k]!)), y(near(nyquistIm[k]!)));
  context.stroke();
  context.globalAlpha = 1;
}

function circle(
  context: CanvasRenderingContext2D,
  x: number,
  y: number,
  radius: number,
  colour: string,
  dash: number[],
): void {
  context.strokeStyle = colour;
  context.setLineDash(dash);
  context.beginPath();
  context.arc(x, y, radius, 0, 2 * Math.PI);
  context.stroke();
  context.setLineDash([]);
}
