import type { Scene } from '../../shared/core/scene.ts';
import type { PositioningTest } from '../../shared/protocol/accuracy.ts';
import type { JobValues } from '../../shared/study/job.ts';
import type { AxisStart } from '../run/axis.ts';
import { evaluatePositioning } from './iso230.ts';
import { measuringPlan } from './targets.ts';
import { TestAxis } from './testAxis.ts';
import { testLimits } from './testLimits.ts';

/** Approaches of every target from either side (ISO 230-2:2014, 5.3, from memory). */
const APPROACHES = 5;
/** The tool position is averaged over this time at each target, s. */
const LOOK = 0.02;

/**
 * The positioning test of ISO 230-2 on the tool of a running axis: its deviation from each target
 * at standstill, approached from below in one run through all targets and from above in the next.
 * In the state `worn`, the wear of the job is added to the lost motion.
 */
export function positioning(
  scene: Scene,
  job: { readonly values: Pick<JobValues, 'travel' | 'wear'> },
  state: PositioningTest['state'],
  start: AxisStart = {},
): PositioningTest {
  const { parameters: p } = scene;
  const { targets, from, to } = measuringPlan(p.travelMin, p.travelMax, job.values.travel);
  const wear = state === 'worn' ? { backlash: p.backlash + job.values.wear } : {};
  const limits = testLimits(p, job.values.travel / (targets.length - 1));
  const axis = new TestAxis(scene, from, { ...limits, ...wear }, start);
  const deviationAt = (target: number) => {
    axis.goTo(target);
    axis.settle();
    return axis.look(LOOK).mean - target;
  };
  const measured = targets.map((target) => ({ target, up: [] as number[], down: [] as number[] }));
  const backwards = [...measured].reverse();
  axis.settle();
  for (let approach = 0; approach < APPROACHES; approach++) {
    for (const { target, up } of measured) up.push(deviationAt(target));
    axis.goTo(to);
    axis.settle();
    for (const { target, down } of backwards) down.push(deviationAt(target));
    axis.goTo(from);
    axis.settle();
  }
  const up = measured.map((each) => each.up);
  const down = measured.map((each) => each.down);
  return { state, targets, up, down, figures: evaluatePositioning(up, down) };
}
