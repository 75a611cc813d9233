import { type Agreement, agreement } from './lapse/agreement.ts';
import { DUTIES } from './lapse/duties.ts';

export interface LapsePace extends Agreement {
  readonly name: string;
}

/** Ten minutes of a warming duty of each drive: the full model from end to end, and the time-lapse. Takes minutes. */
export function timeLapsePace(seconds = 600): LapsePace[] {
  return Object.entries(DUTIES).map(([name, scene]) => ({
    name,
    ...agreement(scene, seconds, 10, () => performance.now()),
  }));
}
