import type { Scene } from '../../shared/core/scene.ts';
import { TestAxis } from './testAxis.ts';
import { testLimits } from './testLimits.ts';

/**
 * How far the axis comes from, as a share of its travel: so that guide and lost motion lie as a
 * move leaves them.
 */
const LEAD_IN = 0.05;
/** How long it rests once it is in the window, s: what creeps inside it comes to an end. */
const REST = 0.5;

/**
 * An axis at rest in the middle of its travel, `at` m, approached from below; it may be moved about
 * by `room` m.
 */
export function standing(scene: Scene): {
  readonly axis: TestAxis;
  readonly at: number;
  readonly room: number;
} {
  const { travelMin, travelMax } = scene.parameters;
  const at = (travelMin + travelMax) / 2;
  const room = LEAD_IN * (travelMax - travelMin);
  const axis = new TestAxis(scene, at - room, testLimits(scene.parameters, room));
  axis.settle();
  axis.goTo(at);
  axis.settle();
  axis.stand(REST);
  return { axis, at, room };
}
