import type { Scene } from '../core/scene.ts';
import { runUp } from '../motion/moveLimits.ts';
import type { Job } from './job.ts';
import { motionLimits } from './jobMotion.ts';

/** Rest at either end of the scan, s. */
const REST = 0.5;

/**
 * The axis of a candidate at the scan of the job in place of its moves: over the length at the speed, from the middle of the travel, and
 * back at the speed of the moves. Where the job asks for no scan it is as it was.
 */
export function scanScene(job: Job, scene: Scene): Scene {
  const { values } = job;
  const limits = motionLimits(job);
  if (values.rippleLimit === 0 || limits === null) return scene;
  const stroke = values.scanLength + 2 * runUp({ ...limits, speed: values.scanSpeed });
  return {
    ...scene,
    moves: [],
    parameters: {
      ...scene.parameters,
      ...limits,
      program: 'scan',
      scanSpeed: values.scanSpeed,
      start: -stroke / 2,
      stroke,
      dwell: REST,
    },
  };
}
