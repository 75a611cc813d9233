import type { Unit } from '../core/units.ts';

/** How a figure stands to what is allowed: within it, close to it, beyond it, or without a limit. */
export type Standing = 'good' | 'close' | 'beyond' | 'plain';

/** A figure of the sizing, with the calculation that led to it. SI. */
export interface SizingFigure {
  readonly id: string;
  readonly label: string;
  readonly symbol: string;
  readonly value: number;
  readonly unit: Unit;
  /** In symbols, and the same with the numbers and their units put in: 'F_rms = √(Σ F²t/Σ t)'. */
  readonly formula: string;
  readonly numbers: string;
  /** What the value may be at most or at least; null without a limit. */
  readonly limit: { readonly value: number; readonly side: 'max' | 'min' } | null;
  readonly standing: Standing;
  /** Where the formula comes from, and what it leaves out; a sentence or two. */
  readonly note: string;
}

/** Force against speed, both positive. SI. */
export interface Envelope {
  readonly speed: readonly number[];
  /** All motors together, at the bus voltage: their continuous force, and that for the overload time; 0 where they cannot run. */
  readonly continuous: readonly number[];
  readonly peak: readonly number[];
  /** The job's own force and speed, in the order of time, as absolute values. */
  readonly trajectory: readonly { readonly speed: number; readonly force: number }[];
  /** Root mean squares of the job: the continuous force that it needs. */
  readonly rms: { readonly speed: number; readonly force: number };
}

/** What can be said of a drive on a job with pencil and paper. */
export interface Sizing {
  readonly figures: readonly SizingFigure[];
  readonly envelope: Envelope;
  /** True when no figure is beyond its limit. */
  readonly passes: boolean;
  /** What is beyond its limit, in plain words. */
  readonly reasons: readonly string[];
}

/** The value of a figure of a sizing, SI; null where the drive has no such figure. */
export function sizingValue({ figures }: Sizing, id: string): number | null {
  return figures.find((figure) => figure.id === id)?.value ?? null;
}
