import type { LoopAnalysis, MeasuredLoop } from '../../../shared/protocol/analysis.ts';

/** What the charts of a loop show. */
export interface LoopChartData {
  readonly analysis: LoopAnalysis;
  /** A loop to compare with, drawn faintly. */
  readonly pinned: LoopAnalysis | null;
  readonly measured: MeasuredLoop | null;
  /** The loop is no longer the one that was measured. */
  readonly isStale: boolean;
  /** Where values are read, Hz; null: nowhere. */
  readonly cursor: number | null;
  /** Gains over frequency, Hz, of the filters in use. */
  readonly filters: readonly ((frequency: number) => number)[];
}

/** A loop with nothing beside it. */
export function loopAlone(analysis: LoopAnalysis): LoopChartData {
  return { analysis, pinned: null, measured: null, isStale: false, cursor: null, filters: [] };
}

/** Opacity of what is shown for comparison, and of what is out of date. */
export const FAINT = 0.45;
export const STALE = 0.35;
