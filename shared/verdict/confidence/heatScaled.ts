import { sinkTemperature } from '../../axis/temperature.ts';
import type { HeatState } from '../../protocol/timeLapse.ts';
import { type Sizing, sizingValue } from '../../sizing/sizing.ts';
import type { CandidateOutcome } from '../../study/outcome.ts';
import type { JudgedCandidate } from '../judgement.ts';
import { withStates } from '../withStates.ts';

/**
 * What was simulated of the day, as the calculation says that it differs: with T the calculated winding in steady state, T_0 the colder
 * of room and coolant, P the calculated mean power, and a dash for the axis as it was drawn,
 *
 *     ΔT_winding' = ΔT_winding (T' − T_0)/(T − T_0)      growth' = growth P'/P      power' = power P'/P
 *
 * since every temperature rises in proportion to the heat that drives it. A day that trips has nothing to scale.
 */
export function heatScaled(
  { outcome, sizing, scene: { parameters: p } }: JudgedCandidate,
  drawn: Sizing,
): CandidateOutcome {
  const { asSet } = outcome.heat;
  const cool = Math.min(p.ambient, sinkTemperature(p));
  const rise = ratio(drawn, sizing, (each) => (sizingValue(each, 'windingTemperature') ?? cool) - cool);
  const power = ratio(drawn, sizing, (each) => sizingValue(each, 'energy') ?? 0);
  const course = withStates(asSet, (state: HeatState) => ({
    windingPeak: cool + rise * (state.windingPeak - cool),
    growth: power * state.growth,
    electricPower: power * state.electricPower,
  }));
  const hot = course.samples.find(({ windingPeak }) => windingPeak > p.foldbackTemperature);
  const hotTime = asSet.trip ? asSet.hotTime : (hot?.time ?? null);
  return { ...outcome, heat: { ...outcome.heat, asSet: { ...course, hotTime } } };
}

/** Where the calculation has no such figure, or no finite one, nothing is scaled: the calculation itself rules the drive out then. */
function ratio(drawn: Sizing, stated: Sizing, of: (sizing: Sizing) => number): number {
  const found = of(drawn) / of(stated);
  return found > 0 && Number.isFinite(found) ? found : 1;
}
