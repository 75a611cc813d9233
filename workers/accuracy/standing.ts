import type { Scene } from '../../shared/core/scene.ts';
import { TestAxis } from './testAxis.ts';
import { testLimits } from './testLimits.ts';

/**
 * Length of the approach as a share of the travel: it leaves guide and lost motion as a move does.
 */
const LEAD_IN = 0.05;
/** Rest after settling, s, so that creep within the window has ended. */
const REST = 0.5;

/**
 * An axis at rest in the middle of its travel, at `at` m, approached from below; it may be moved by
 * up to `room` m from there.
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
