import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { LoopAnalysis, MeasuredLoop, OperatingPoint } from '../../../shared/protocol/analysis.ts';

/** An analysis with what it was made from. */
export interface Analysed {
  readonly analysis: LoopAnalysis;
  readonly parameters: Parameters;
  readonly point: OperatingPoint;
}

/** A measured loop with the analysis of the same moment. */
export interface Measured {
  readonly loop: MeasuredLoop;
  readonly kind: string;
  readonly analysis: LoopAnalysis;
}

/** Everything that the plots show. */
export interface LoopData {
  readonly present: Analysed | null;
  readonly pinned: Analysed | null;
  readonly measured: Measured | null;
  /** The loop is no longer the one that was measured. */
  readonly stale: boolean;
  /** Hz; null: none. */
  readonly cursor: number | null;
}
