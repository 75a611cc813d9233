import type { ParameterChanges } from '../core/parameters/table.ts';
import type { Job } from './job.ts';
import type { PartChoice } from './parts.ts';
import type { Ranges } from './ranges.ts';

/** A drive that is tried on the job. */
export interface CandidateChoice {
  /** Id of a preset of the catalogue. */
  readonly preset: string;
  /** Motors in parallel on one amplifier. */
  readonly motorCount: number;
  /** Datasheet values typed over those of the preset, for one motor; empty for a preset as it is. */
  readonly own: ParameterChanges;
  /** Guide, encoder, screw and its ends where they are not the usual ones of the preset. */
  readonly parts?: PartChoice;
  /** What the drive with its parts costs, in the currency of the job; without it the efforts of its parts are added up. */
  readonly price?: number;
  /** What pretuning found for it; null: not yet tuned. */
  readonly gains: ParameterChanges | null;
}

/** A job and the drives that are compared on it: what a file or a link holds, and all that is needed to repeat the rest. */
export interface Study {
  readonly job: Job;
  /** One to four. */
  readonly candidates: readonly CandidateChoice[];
  /** How far the inputs may be off, where that is not what is usual. */
  readonly ranges?: Ranges;
}

export const MAX_CANDIDATES = 4;

/** What a candidate is called by its place, from 0: A, B, C, D. */
export function candidateLetter(place: number): string {
  return String.fromCharCode('A'.charCodeAt(0) + place);
}

/** The place of a candidate by its letter. */
export function candidatePlace(letter: string): number {
  return letter.charCodeAt(0) - 'A'.charCodeAt(0);
}
