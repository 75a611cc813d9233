import { continuousForce } from '../../shared/axis/motor.ts';
import { at } from '../../shared/core/at.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { DisturbanceTest } from '../../shared/protocol/accuracy.ts';
import { largestMagnitude } from '../math/statistics.ts';
import { standing } from './standing.ts';
import { thinned } from './thinned.ts';

/** The force as a share of the continuous force of all motors. Common practice, no source. */
export const FORCE_SHARE = 0.2;
/** How long the axis is observed before the force and after it, s. */
const BEFORE = 0.02;
const WATCHED = 0.5;

/**
 * A sudden force on the standing table, along +x and constant from then on: a fifth of the
 * continuous force. The deviation is that of the tool from where it stood; an encoder on a screw's
 * motor does not see all of it.
 */
export function disturbance(scene: Scene): DisturbanceTest {
  const { window } = scene.parameters;
  const force = FORCE_SHARE * continuousForce(scene.parameters);
  const { axis } = standing(scene);
  const stood = axis.look(BEFORE).mean;

  const error: number[] = [];
  axis.change({ process: 'constant', processForce: force });
  axis.stand(WATCHED, () => void error.push(axis.tool - stood));
  const peak = largestMagnitude(error);
  const back = error.reduce((last, value, k) => (Math.abs(value) > window ? k + 1 : last), 0);
  const shown = thinned(error.length);
  return {
    force,
    peak,
    stiffness: force / peak,
    recovery: back < error.length ? back * axis.period : null,
    time: shown.map((k) => k * axis.period),
    error: shown.map((k) => at(error, k)),
  };
}
