import { candidatePlace } from '../../shared/study/candidate.ts';
import type { Colour } from '../ui/look/colours.ts';

/**
 * How a line is told from its neighbours besides its colour: lengths of dash and gap, px; none is
 * unbroken.
 */
export const DASHES = {
  solid: [],
  dashed: [10, 5],
  dotted: [3, 4],
  dashDot: [12, 4, 3, 4],
} as const satisfies Record<string, readonly number[]>;

export type Dash = keyof typeof DASHES;

/** How a line is drawn. */
export interface Pen {
  /** That of the text unless stated. */
  readonly colour?: Colour;
  /** px; 1 unless stated. */
  readonly width?: number;
  readonly dash?: Dash;
  /** 0 to 1. */
  readonly opacity?: number;
}

/** How an area is filled. */
export interface Fill {
  readonly colour: Colour;
  /** 0 to 1. */
  readonly opacity?: number;
}

const IN_ORDER = ['solid', 'dashed', 'dashDot', 'dotted'] as const satisfies readonly Dash[];

/** The line of the n-th of several curves in one drawing, counted from 0. */
export function penOfPlace(place: number, colour: Colour, width = 2): Pen {
  return { colour, width, dash: IN_ORDER[place % IN_ORDER.length] ?? 'solid' };
}

/**
 * The line of a candidate: candidates differ in line and letter, whatever the colour of the
 * quantity.
 */
export function candidatePen(letter: string, colour: Colour, width = 2): Pen {
  return penOfPlace(candidatePlace(letter), colour, width);
}
