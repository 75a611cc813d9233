import { type Figure, figureText } from '../../figures/figure.ts';
import type { Job } from '../../study/job.ts';
import type { JudgedCandidate, VerdictGroup } from '../judgement.ts';
import { lowered } from '../text.ts';

/** How a figure is told in a sentence that sets one candidate against another. */
export interface Speech {
  /** How much it counts beside the others; 1 for what a customer asks first. */
  readonly weight: number;
  /** Figures of one family say nearly the same: one of them is enough. */
  readonly family: string;
  /** 'draws' with a quantity ('RMS current'), or 'has' with a thing and its article ('a speed ripple'). */
  readonly verb: 'has' | 'draws' | 'takes' | 'moves';
  readonly noun: string;
  readonly measure: 'size' | 'length' | 'height' | 'warmth';
  /** A difference between sizes below this hardly matters to the job; a warmth counts from the room's. None: it always does. */
  readonly mattersFrom?: (job: Job) => number;
}

/** One figure that candidates are compared by: what it means, where it is read, what the job asks of it. SI. */
export interface FigureRow extends Figure {
  readonly id: string;
  readonly group: VerdictGroup;
  /** What a sentence calls it, where its label would not do: 'speed ripple of the scan'. */
  readonly name: string;
  readonly better: 'less' | 'more';
  /** Null where the candidate has no such figure. */
  readonly of: (candidate: JudgedCandidate, job: Job) => number | null;
  /** Of a value, or why there is none. */
  readonly text: (value: number | null) => string;
  /** What the job asks, in words; null where it asks nothing. */
  readonly asked: (job: Job) => string | null;
  /** The largest that the job allows, where its unit is one that people differ in; null where it allows any. */
  readonly limit?: (job: Job) => number | null;
  /** The difference below which two candidates tie: the larger of an absolute and a share of the larger value. */
  readonly resolution: { readonly absolute: number; readonly relative: number };
  /** Candidates are marked by it; a plain yes or no is not. */
  readonly ranked: boolean;
  readonly speech: Speech | null;
  /** Why it is what it is, after the candidate's parameters and outcome; beside a rival only what explains the difference. */
  readonly cause: (candidate: JudgedCandidate, job: Job, rival: JudgedCandidate | null) => string | null;
}

/** What a row has to state; the rest is usual unless stated. */
export type Given = Figure &
  Pick<FigureRow, 'id' | 'group' | 'better' | 'of' | 'resolution'> &
  Partial<FigureRow>;

export function figureRow(given: Given): FigureRow {
  return {
    name: lowered(given.label),
    text: (value) => figureText(given, value),
    asked: () => null,
    ranked: true,
    speech: null,
    cause: () => null,
    ...given,
  };
}

/** Whether two values of a row cannot be told apart. */
export function tie({ resolution }: FigureRow, a: number, b: number): boolean {
  if (a === b) return true;
  const share = resolution.relative * Math.max(Math.abs(a), Math.abs(b));
  return Number.isFinite(share) && Math.abs(a - b) <= Math.max(resolution.absolute, share);
}

export function isBetter(row: FigureRow, a: number, b: number): boolean {
  return row.better === 'less' ? a < b : a > b;
}
