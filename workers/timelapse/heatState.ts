import { largestGrowth } from '../../shared/axis/growth.ts';
import { sinkConductance, sinkTemperature } from '../../shared/axis/temperature.ts';
import { at } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { HeatState } from '../../shared/protocol/timeLapse.ts';
import type { Temperatures } from '../model/state.ts';
import { type Cycle, forceFactor, lossesAt } from './cycle.ts';
import type { CycleMap } from './cycleMap.ts';

/**
 * Temperatures, losses and growth of the cycle that begins at temperatures t. `map` is that of the
 * cycle about t, `cold` the force per ampere at ambient temperature, N/A.
 */
export function heatState(
  p: Parameters,
  cycle: Cycle,
  map: CycleMap,
  t: Temperatures,
  cold: number,
): HeatState {
  const passed = map.through(t);
  const sum = { copper: 0, iron: 0, guide: 0, nut: 0, weighted: 0, sinkHeat: 0 };
  let before = t;
  for (const [k, part] of cycle.parts.entries()) {
    const after = at(passed, k + 1);
    const winding = (before.winding + after.winding) / 2;
    const carrier = (before.carrier + after.carrier) / 2;
    before = after;
    const losses = lossesAt(p, cycle, part, winding, carrier);
    const share = part.duration / cycle.duration;
    sum.copper += losses.copper * share;
    sum.iron += losses.iron * share;
    sum.guide += losses.guide * share;
    sum.nut += losses.nut * share;
    sum.weighted += carrier * losses.copper * share;
    sum.sinkHeat += sinkConductance(p, part.draught) * (carrier - sinkTemperature(p)) * share;
  }
  const { copper, iron, guide, nut, sinkHeat } = sum;
  // Force needs current: what counts is the temperature of the carrier while current flows.
  const carrier = copper > 0 ? sum.weighted / copper : t.carrier;
  return {
    ...t,
    windingPeak: Math.max(...passed.map(({ winding }) => winding)),
    forcePerAmp: (cycle.forcePerAmp * forceFactor(p, cycle, carrier)) / cold,
    growth: largestGrowth(p, t, cycle.from, cycle.to),
    electricPower: cycle.usefulPower + copper,
    copper,
    iron,
    guide,
    nut,
    sinkHeat,
  };
}
