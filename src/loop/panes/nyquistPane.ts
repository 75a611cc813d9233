import { inUnit } from '../../../shared/core/format.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import type { Theme } from '../../plot/canvas/theme.ts';
import { placeOn, straight } from '../../plot/interpolate.ts';
import { drawLabel } from '../../plot/loop/graph.ts';
import { DASHES } from '../../plot/pens.ts';
import type { LoopData } from './loopData.ts';
import { PlanePane } from './planePane.ts';

/** The open loop round −1, with the unit circle and the circle that it keeps clear of. */
export class NyquistPane extends PlanePane {
  constructor(onChange: () => void) {
    super({
      title: 'Nyquist',
      description: 'The open loop L, the unit circle, and round −1 the circle that L keeps clear of.',
      first: { re: -0.6, im: 0, half: 1.5 },
      halves: [0.05, 500],
      onChange,
    });
  }

  protected drawInside({ present, pinned, measured, stale, cursor }: LoopData, theme: Theme): void {
    const { context, plane } = this;
    const { analysis } = present!;
    const { modulusMargin, stable } = analysis.figures;

    context.lineWidth = 1;
    context.strokeStyle = theme.colour('strong');
    context.setLineDash(DASHES.dotted);
    plane.circle(context, 0, 0, 1);
    context.stroke();
    context.setLineDash([]);

    context.fillStyle = context.strokeStyle = theme.colour('error');
    plane.circle(context, -1, 0, modulusMargin.value);
    context.globalAlpha = 0.13;
    context.fill();
    context.globalAlpha = 1;
    context.stroke();

    context.strokeStyle = theme.colour('ink');
    if (pinned) {
      context.globalAlpha = 0.45;
      this.#curve(pinned.analysis, 1, 1.25);
    }
    context.globalAlpha = 0.5;
    context.setLineDash(DASHES.dashed);
    this.#curve(analysis, -1, 1);
    context.setLineDash([]);
    context.globalAlpha = 1;
    this.#curve(analysis, 1, 2);

    if (measured) {
      const { magnitude, phase } = measured.loop.openLoop;
      context.globalAlpha = stale ? 0.35 : 1;
      context.lineWidth = 1.5;
      for (const [k, value] of magnitude.entries()) {
        this.#ring(theme, value * Math.cos(phase[k]!), value * Math.sin(phase[k]!), 2.5);
      }
      context.globalAlpha = 1;
    }

    context.fillStyle = stable ? theme.colour('ink') : theme.colour('alarm');
    plane.circle(context, -1, 0, 4 / plane.unit);
    context.fill();
    context.textAlign = 'right';
    context.textBaseline = 'middle';
    drawLabel(context, theme, '−1', plane.x(-1) - 7, plane.y(0) - theme.textSize * 0.7);
    context.fillStyle = theme.colour('error');
    context.textAlign = 'left';
    const { left, top } = plane.area;
    const modulus = `modulus ${inUnit(modulusMargin.value, '', 2)}`;
    drawLabel(context, theme, modulus, left + 5, top + theme.textSize * 0.8);

    if (cursor !== null) {
      const place = placeOn(analysis.frequency, cursor);
      context.strokeStyle = theme.colour('ink');
      context.lineWidth = 1.5;
      this.#ring(theme, straight(analysis.nyquistRe, place), straight(analysis.nyquistIm, place), 4);
    }
  }

  #curve({ nyquistRe, nyquistIm }: LoopAnalysis, sign: 1 | -1, width: number): void {
    const { context, plane } = this;
    context.beginPath();
    for (let k = 0; k < nyquistRe.length; k++)
      context.lineTo(plane.x(nyquistRe[k]!), plane.y(sign * nyquistIm[k]!));
    context.lineWidth = width;
    context.lineJoin = 'round';
    context.stroke();
  }

  #ring(theme: Theme, re: number, im: number, radius: number): void {
    const { context, plane } = this;
    plane.circle(context, re, im, radius / plane.unit);
    context.fillStyle = theme.colour('ground');
    context.fill();
    context.stroke();
  }
}
