import { candidatePlace } from '../../../shared/study/candidate.ts';
import type { Pen } from './plot.ts';

/** Candidates are told apart by line style and letter, whatever their quantity's colour: A, B, C, D. */
const DASHES = [undefined, '9 4', '9 3 2 3', '2 3'] as const;

/** The line of the n-th of several curves in one drawing, counted from 0. */
export function pen(place: number, colour: string, width = 2): Pen {
  const dash = DASHES[place % DASHES.length];
  return dash === undefined ? { colour, width } : { colour, width, dash };
}

/** The line of a candidate. */
export function candidatePen(letter: string, colour: string, width = 2): Pen {
  return pen(candidatePlace(letter), colour, width);
}
