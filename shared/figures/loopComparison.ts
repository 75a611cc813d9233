import type { LoopFigures } from '../protocol/analysis.ts';
import { type Verdict, verdictOn } from './comparison.ts';
import {
  LOOP_FIGURE_NAMES,
  LOOP_FIGURES,
  type LoopFigure,
  type LoopFigureName,
  loopValueText,
} from './loopFigures.ts';

/** How each figure of a loop stands to what it was, as far as a table shows it. Those of an unstable loop say nothing of how good it is. */
export function compareLoops(before: LoopFigures, after: LoopFigures): Record<LoopFigureName, Verdict> {
  const told = before.stable && after.stable;
  const verdict = (name: LoopFigureName): Verdict => {
    if (loopValueText(name, before) === loopValueText(name, after)) return 'same';
    const { better, absentIs, of }: LoopFigure = LOOP_FIGURES[name];
    return told
      ? verdictOn(of(before)?.value ?? null, of(after)?.value ?? null, { better, absentIs, resolution: 0 })
      : 'changed';
  };
  return Object.fromEntries(LOOP_FIGURE_NAMES.map((name) => [name, verdict(name)])) as Record<
    LoopFigureName,
    Verdict
  >;
}
