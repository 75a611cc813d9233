import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';

/** A place on the magnitude plot: Hz, dB. */
export interface Place {
  readonly frequency: number;
  readonly level: number;
}

/** What a person asked for: the changes and what they do in words, or in words why it cannot be. */
export type Shaping = { readonly changes: ParameterChanges; readonly text: string } | string;

/** Something on the magnitude plot to take hold of. It keeps the loop as it was when it was made. */
export interface Handle extends Place {
  readonly id: string;
  readonly kind: 'crossover' | 'filter' | 'width' | 'resonance';
  readonly glyph: string;
  readonly label: string;
  /** What it is set to. */
  readonly value: string;
  readonly help: string;
  /** Null: there is nothing to drag. */
  readonly drag: ((to: Place) => Shaping) | null;
  readonly press?: () => Shaping;
  readonly remove?: () => Shaping;
}
