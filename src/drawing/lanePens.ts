import { lanePlace } from '../../shared/study/lane.ts';
import type { Pen } from './plot.ts';

/** Lanes are told apart by line style and letter, whatever their quantity's colour: A, B, C, D. */
const DASHES = [undefined, '9 4', '9 3 2 3', '2 3'] as const;

/** The line of the n-th of several curves in one drawing, counted from 0. */
export function pen(place: number, colour: string, width = 2): Pen {
  const dash = DASHES[place % DASHES.length];
  return dash === undefined ? { colour, width } : { colour, width, dash };
}

/** The line of a lane. */
export function lanePen(letter: string, colour: string, width = 2): Pen {
  return pen(lanePlace(letter), colour, width);
}
