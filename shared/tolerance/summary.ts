import type { Trip } from '../protocol/axis.ts';
import type { RunFigureName } from './runFigures.ts';
import type { NumberName } from './spread.ts';

/** A share of all machines that was estimated from some of them, with its 95 % confidence interval. */
export interface Estimate {
  readonly share: number;
  readonly low: number;
  readonly high: number;
}

/** How a figure lies over the machines that have it. SI. */
export interface FigureSpread {
  readonly name: RunFigureName;
  /** Machines that have it. */
  readonly count: number;
  readonly min: number;
  /** Not exceeded by 5, 50 and 95 % of them. */
  readonly low: number;
  readonly median: number;
  readonly high: number;
  readonly max: number;
  /** Number of the machine with the largest. */
  readonly worst: number;
}

/** How much of what a figure varies by is due to one parameter. */
interface Influence {
  readonly name: NumberName;
  /** First-order Sobol index: share of the variance that would be gone if this parameter did not spread. */
  readonly share: number;
  /** Standardised rank regression coefficient: −1 falls as it rises, 1 rises with it. */
  readonly slope: number;
}

/** What a figure depends on, the strongest first. */
export interface Sensitivity {
  /** 'good': whether a machine is good, 1 or 0. */
  readonly of: RunFigureName | 'good';
  readonly influences: readonly Influence[];
  /** Shares smaller than this cannot be told from chance with so many machines. */
  readonly noise: number;
  /** R² of the rank regression: how much of the order of the machines the slopes explain. */
  readonly explained: number;
}

/** What a study has found so far. */
export interface ToleranceSummary {
  readonly runs: number;
  readonly good: Estimate;
  readonly trips: readonly { readonly kind: Trip['kind']; readonly count: number }[];
  /** Machines without a settling time although they did not trip. */
  readonly unsettled: number;
  /** Machines whose energy account does not balance: their figures are not to be trusted. */
  readonly untrusted: number;
  readonly figures: readonly FigureSpread[];
  readonly sensitivities: readonly Sensitivity[];
  /** Number of the machine that is farthest from being good. */
  readonly worst: number;
}
