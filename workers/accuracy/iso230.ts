import { at } from '../../shared/core/at.ts';
import type { PositioningFigures } from '../../shared/protocol/accuracy.ts';
import { largestMagnitude, mean, range, standardDeviation } from '../math/statistics.ts';

/*
 * Evaluation of positioning after ISO 230-2:2014, Test code for machine tools, part 2, clause 3
 * (terms and formulas). Target P_i, i = 1…m, approach j = 1…n from below (↑) and from above (↓),
 * deviation x_ij = P_ij − P_i, all in m:
 *
 *   x̄_i↑ = (1/n) Σ_j x_ij↑                        mean unidirectional deviation at a target
 *   x̄_i  = (x̄_i↑ + x̄_i↓)/2                        mean bidirectional deviation
 *   B_i  = x̄_i↑ − x̄_i↓     B = max |B_i|           reversal error;  B̄ = (1/m) Σ B_i its mean
 *   s_i↑ = √(Σ_j (x_ij↑ − x̄_i↑)²/(n − 1))          estimator of the standard uncertainty
 *   R_i↑ = 4 s_i↑          R↑ = max R_i↑           unidirectional repeatability
 *   R_i  = max (2 s_i↑ + 2 s_i↓ + |B_i|; R_i↑; R_i↓)   R = max R_i
 *   E↑   = max x̄_i↑ − min x̄_i↑                     unidirectional systematic error
 *   E    = max (x̄_i↑; x̄_i↓) − min (x̄_i↑; x̄_i↓)      bidirectional systematic error
 *   M    = max x̄_i − min x̄_i                       range of the mean bidirectional deviation
 *   A↑   = max (x̄_i↑ + 2 s_i↑) − min (x̄_i↑ − 2 s_i↑)   unidirectional accuracy
 *   A    = the same over both directions           bidirectional accuracy
 */

/** One row for each target, one column for each approach. */
type Deviations = readonly (readonly number[])[];

/** Two approaches are the fewest that have a standard deviation. */
const MIN_APPROACHES = 2;

/**
 * @throws RangeError when the two directions do not have the same targets, or a target has too few
 * approaches
 */
export function evaluatePositioning(up: Deviations, down: Deviations): PositioningFigures {
  check(up, down);
  const [meanUp, meanDown] = [up.map(mean), down.map(mean)];
  const [spreadUp, spreadDown] = [up.map(standardDeviation), down.map(standardDeviation)];
  const reversals = meanUp.map((value, i) => value - at(meanDown, i));
  const [bandUp, bandDown] = [bandOf(meanUp, spreadUp), bandOf(meanDown, spreadDown)];
  const repeatabilities = reversals.map((reversal, i) => {
    const [sUp, sDown] = [at(spreadUp, i), at(spreadDown, i)];
    return Math.max(2 * sUp + 2 * sDown + Math.abs(reversal), 4 * sUp, 4 * sDown);
  });
  return {
    meanUp,
    meanDown,
    spreadUp,
    spreadDown,
    reversal: largestMagnitude(reversals),
    meanReversal: mean(reversals),
    repeatability: Math.max(...repeatabilities),
    repeatabilityUp: 4 * Math.max(...spreadUp),
    repeatabilityDown: 4 * Math.max(...spreadDown),
    systematic: range([...meanUp, ...meanDown]),
    systematicUp: range(meanUp),
    systematicDown: range(meanDown),
    meanRange: range(meanUp.map((value, i) => (value + at(meanDown, i)) / 2)),
    accuracy: range([...bandUp, ...bandDown]),
    accuracyUp: range(bandUp),
    accuracyDown: range(bandDown),
  };
}

function check(up: Deviations, down: Deviations): void {
  if (up.length === 0 || up.length !== down.length)
    throw new RangeError(
      `up has ${up.length} targets and down ${down.length}; both need the same, one at least.`,
    );
  for (const approaches of [...up, ...down])
    if (approaches.length < MIN_APPROACHES)
      throw new RangeError(
        `A target has ${approaches.length} approaches from one side; at least ${MIN_APPROACHES} are needed.`,
      );
}

/** Mean plus and minus two standard uncertainties of every target. */
function bandOf(means: readonly number[], spreads: readonly number[]): number[] {
  return means.flatMap((value, i) => {
    const band = 2 * at(spreads, i);
    return [value + band, value - band];
  });
}
