import type { Scene } from '../../../shared/core/scene.ts';
import { learnCogging } from '../../../workers/accuracy/learnCogging.ts';

/** The cogging table of a scene, learned as the page does. */
export function learn(scene: Scene) {
  const result = learnCogging(scene);
  if (!('table' in result)) throw new Error('nothing was learned');
  return result;
}
