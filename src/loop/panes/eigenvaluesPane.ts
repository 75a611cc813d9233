import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import type { Theme } from '../../plot/canvas/theme.ts';
import { drawLabel } from '../../plot/loop/graph.ts';
import { DASHES } from '../../plot/pens.ts';
import type { LoopData } from './loopData.ts';
import { PlanePane } from './planePane.ts';

const ARM = 4.5;
/** Damping ratio whose line is drawn: swings die out in about a period. */
const DAMPED = 0.5;

/** The eigenvalues of the sampled closed loop over one position-loop sample: crosses, in the unit circle while it is stable. */
export class EigenvaluesPane extends PlanePane {
  constructor(onChange: () => void) {
    super({
      title: 'Eigenvalues',
      description: 'Eigenvalues of the sampled closed loop; inside the unit circle they die out.',
      first: { re: 0, im: 0, half: 1.15 },
      halves: [0.005, 3],
      onChange,
    });
  }

  protected drawInside({ present, pinned }: LoopData, theme: Theme): void {
    const { context, plane } = this;
    const { analysis } = present!;
    context.lineWidth = 1.5;
    context.strokeStyle = theme.colour('strong');
    plane.circle(context, 0, 0, 1);
    context.stroke();
    context.lineWidth = 1;
    context.setLineDash(DASHES.dotted);
    this.#dampingLine();
    context.setLineDash([]);

    if (pinned) {
      context.globalAlpha = 0.45;
      this.#crosses(pinned.analysis, theme);
      context.globalAlpha = 1;
    }
    this.#crosses(analysis, theme);

    const { spectralRadius, stable } = analysis.figures;
    const { left, top } = plane.area;
    context.textAlign = 'left';
    context.textBaseline = 'middle';
    context.fillStyle = stable ? theme.colour('soft') : theme.colour('alarm');
    drawLabel(
      context,
      theme,
      `largest |z| ${spectralRadius.toFixed(4)}`,
      left + 5,
      top + theme.textSize * 0.8,
    );
  }

  #crosses({ eigenvaluesRe, eigenvaluesIm }: LoopAnalysis, theme: Theme): void {
    const { context, plane } = this;
    eigenvaluesRe.forEach((re, k) => {
      const im = eigenvaluesIm[k]!;
      const outside = Math.hypot(re, im) >= 1;
      context.strokeStyle = outside ? theme.colour('alarm') : theme.colour('ink');
      context.lineWidth = outside ? 3 : 2;
      const [x, y] = [plane.x(re), plane.y(im)];
      context.beginPath();
      context.moveTo(x - ARM, y - ARM);
      context.lineTo(x + ARM, y + ARM);
      context.moveTo(x - ARM, y + ARM);
      context.lineTo(x + ARM, y - ARM);
      context.stroke();
    });
  }

  /** z = exp(ωT(−D ± j√(1 − D²))): where modes of one damping ratio lie. */
  #dampingLine(): void {
    const { context, plane } = this;
    const turn = Math.sqrt(1 - DAMPED ** 2);
    for (const sign of [1, -1]) {
      context.beginPath();
      for (let k = 0; k <= 60; k++) {
        const angle = (Math.PI * k) / 60;
        const radius = Math.exp((-angle * DAMPED) / turn);
        context.lineTo(plane.x(radius * Math.cos(angle)), plane.y(sign * radius * Math.sin(angle)));
      }
      context.stroke();
    }
  }
}
