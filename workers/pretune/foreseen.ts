import { slidingFriction } from '../../shared/axis/guide.ts';
import type { ForeseenTuning } from '../../shared/protocol/pretune.ts';
import { analyse } from '../analysis/analyse.ts';
import type { LoopLimit } from './loopLimit.ts';
import { designPoints } from './plantResponse.ts';
import { textbookTunings } from './rules/textbook.ts';
import type { Task } from './task.ts';
import { soundness } from './tryOut.ts';

/**
 * The first answer, from the linear analysis alone: gains by the first textbook rule that keeps the limit, and what can be said of
 * them before anything has run. Null where no rule keeps it.
 *
 *     τ = −T/ln|λ|      λ the slowest eigenvalue of the sampled loop while sliding: an error that is left falls to 1/e in τ
 *     F/|K|_min         largest error that a force of the size of the dry friction F causes at any frequency
 *
 * Settling is not foreseen: it depends on how far off the axis arrives, which takes a run.
 */
export function foreseen({ scene: { parameters: machine } }: Task, limit: LoopLimit): ForeseenTuning | null {
  const first = textbookTunings(machine, limit).next();
  if (first.done) return null;
  const { name, changes } = first.value;
  const p = { ...machine, ...changes };
  const { eigenvaluesRe, eigenvaluesIm, figures } = analyse(p, designPoints(p).sliding);
  const slowest = Math.hypot(eigenvaluesRe[0] ?? 0, eigenvaluesIm[0] ?? 0);
  const decay = -p.positionDivider / p.currentRate / Math.log(slowest);
  const friction = slidingFriction(p);
  return {
    label: name,
    changes,
    ...soundness(p),
    decay: decay > 0 && Number.isFinite(decay) ? decay : null,
    friction: friction > 0 ? { force: friction, error: friction / figures.minimumStiffness.value } : null,
  };
}
