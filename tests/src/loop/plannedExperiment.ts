import { expect } from 'vitest';
import type { Scene } from '../../../shared/core/scene.ts';
import type { OperatingPoint } from '../../../shared/protocol/analysis.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { experimentOf, suggestedSweep } from '../../../src/loop/forms/experiment.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import { measureSteppedSine } from '../../../workers/identify/steppedSine.ts';

/** The experiment that the loop view suggests for a scene, and the analysis that it is to be compared with. */
export function planned(scene: Scene, friction: OperatingPoint['friction'], sweep = {}) {
  const p = scene.parameters;
  const point = { ...startingPoint(p), friction };
  const analysis = analyse(p, point);
  const suggested = { ...suggestedSweep(p, point, analysis.figures), ...sweep };
  const plan = experimentOf(scene, 'stepped sine', point, suggested);
  if ('problem' in plan) throw new Error(plan.problem);
  return { analysis, experiment: plan.experiment };
}

export function expectToRunToItsEnd(scene: Scene): void {
  for (const friction of ['sliding', 'presliding'] as const) {
    const { experiment } = planned(scene, friction, { sweepTime: 0.6 });
    const measured = measureSteppedSine(experiment.scene);
    expect(measured.ended).toBeNull();
    expect(measured.frequency.length).toBe(experiment.scene.parameters.sweepPoints);
  }
}
