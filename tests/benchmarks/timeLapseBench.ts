import { type Agreement, agreement } from './lapse/agreement.ts';
import { DUTIES } from './lapse/duties.ts';
import { processorClock } from './processorClock.ts';

export interface LapsePace extends Agreement {
  readonly name: string;
}

/** Two minutes of a warming duty of each drive: the full model from end to end, and the time-lapse. */
export function timeLapsePace(seconds = 120): LapsePace[] {
  return Object.entries(DUTIES).map(([name, scene]) => ({
    name,
    ...agreement(scene, seconds, 10, processorClock()),
  }));
}
