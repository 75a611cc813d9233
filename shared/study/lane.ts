import type { ParameterChanges } from '../parameters/table.ts';
import type { Job } from './job.ts';

/** A drive that is tried on the job. */
export interface LaneChoice {
  /** Id of a kit of the catalogue. */
  readonly kit: string;
  /** Motors in parallel on one amplifier. */
  readonly motorCount: number;
  /** Datasheet values typed over those of the kit, for one motor; empty for a kit as it is. */
  readonly own: ParameterChanges;
  /** What pretuning found for it; null: not yet tuned. */
  readonly gains: ParameterChanges | null;
}

/** A job and the drives that are compared on it: what a file or a link holds, and all that is needed to repeat the rest. */
export interface Study {
  readonly job: Job;
  /** One to four. */
  readonly lanes: readonly LaneChoice[];
}

export const MOST_LANES = 4;

/** What a lane is called by its place, from 0: A, B, C, D. */
export function laneLetter(place: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + place);
}

/** The place of a lane by its letter. */
export function lanePlace(letter: string): number {
  return letter.charCodeAt(0) - 'A'.charCodeAt(0);
}
