import { filtersOn } from '../../../shared/axis/loop/filterSections.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';
import type { LoopAnalysis, MeasuredLoop, OperatingPoint } from '../../../shared/protocol/analysis.ts';
import type { LoopChartData } from '../../plot/loop/loopData.ts';
import { filterGain } from '../handles/filterGain.ts';

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
  readonly isStale: boolean;
  /** Hz; null: none. */
  readonly cursor: number | null;
}

/** The same as charts take it; null while nothing has been analysed. */
export function chartDataOf({ present, pinned, measured, isStale, cursor }: LoopData): LoopChartData | null {
  if (!present) return null;
  const { analysis, parameters } = present;
  const filters = filtersOn(parameters).map((n) => filterGain(n, parameters));
  return {
    analysis,
    pinned: pinned?.analysis ?? null,
    measured: measured?.loop ?? null,
    isStale,
    cursor,
    filters,
  };
}
