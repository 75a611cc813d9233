import type { Row, ValueOf } from '../core/parameters/row.ts';
import type { MoveLine } from '../core/scene.ts';
import { JOB_ROWS } from './jobRows.ts';

export type JobEntry = keyof typeof JOB_ROWS;

/** What a customer asks of an axis, whichever drive it has. SI. */
export type JobValues = { [K in JobEntry]: ValueOf<(typeof JOB_ROWS)[K]> };

export interface Job {
  readonly title: string;
  readonly values: JobValues;
  /** Used by the motion 'move list'. */
  readonly moves: readonly MoveLine[];
}

export const JOB_ENTRIES = Object.keys(JOB_ROWS) as JobEntry[];

export function jobRow(name: JobEntry): Row {
  return JOB_ROWS[name];
}

export function defaultJobValues(): JobValues {
  return Object.fromEntries(JOB_ENTRIES.map((name) => [name, jobRow(name).default])) as JobValues;
}
