import { valueAt } from '../../../shared/core/at.ts';
import type { LoopAnalysis } from '../../../shared/protocol/analysis.ts';
import { inside } from '../inside.ts';
import { bentLine, circle, label, type Mark, point } from '../marks.ts';
import { FAINT, type LoopChartData } from './loopData.ts';
import { type Plane, planeGround, planeLabels } from './plane.ts';

const ARM = 4.5;
/** Damping ratio whose line is drawn: oscillations die out in about a period. */
const DAMPED = 0.5;
/** Points of half a line of damping. */
const BENDS = 60;

/**
 * The eigenvalues of the sampled closed loop over one position-loop sample: crosses, in the unit
 * circle while it is stable.
 */
export function eigenvalueMarks(plane: Plane, { analysis, pinned }: LoopChartData, textSize: number): Mark[] {
  const { frame, x, y, unit } = plane;
  const { spectralRadius, stable } = analysis.figures;
  return [
    ...planeGround(plane, textSize),
    ...inside(
      frame,
      [
        circle(x.at(0), y.at(0), unit, { pen: { colour: 'strong', width: 1.5 } }),
        dampingLine(plane, 1),
        dampingLine(plane, -1),
        ...(pinned ? crosses(plane, pinned, FAINT) : []),
        ...crosses(plane, analysis, 1),
      ],
      textSize,
    ),
    label(frame.left + 5, frame.top + textSize * 0.8, `largest |z| ${spectralRadius.toFixed(4)}`, {
      colour: stable ? 'soft' : 'alarm',
      halo: true,
    }),
    ...planeLabels(plane, textSize),
  ];
}

function crosses({ x, y }: Plane, { eigenvaluesRe, eigenvaluesIm }: LoopAnalysis, opacity: number): Mark[] {
  return Array.from(eigenvaluesRe, (re, k) => {
    const im = valueAt(eigenvaluesIm, k);
    const isOutside = Math.hypot(re, im) >= 1;
    return point(x.at(re), y.at(im), 'cross', ARM, {
      colour: isOutside ? 'alarm' : 'ink',
      width: isOutside ? 3 : 2,
      opacity,
    });
  });
}

/** z = exp(ωT(−D ± j√(1 − D²))): where modes of one damping ratio lie. */
function dampingLine({ x, y }: Plane, sign: 1 | -1): Mark {
  const turn = Math.sqrt(1 - DAMPED ** 2);
  const points: number[] = [];
  for (let k = 0; k <= BENDS; k++) {
    const angle = (Math.PI * k) / BENDS;
    const radius = Math.exp((-angle * DAMPED) / turn);
    points.push(x.at(radius * Math.cos(angle)), y.at(sign * radius * Math.sin(angle)));
  }
  return bentLine(points, { colour: 'strong', dash: 'dotted' });
}
