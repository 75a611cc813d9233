import type { Parameters } from '../../shared/core/parameters/table.ts';
import type {
  CoolantNeed,
  CoolingTarget,
  CoolingVerdict,
  HeatState,
  LapseOptions,
} from '../../shared/protocol/timeLapse.ts';
import { minimum } from '../math/minimum.ts';
import { root } from '../math/root.ts';
import { startTemperatures } from '../model/heat.ts';
import { coldForce } from './course.ts';
import type { Cycle } from './cycle.ts';
import type { CycleStore } from './cycleStore.ts';
import { steadyWith, withFreshCycle } from './steady.ts';

/** Coldest coolant that a machine is given, °C: colder water freezes or makes everything it touches wet. Common practice, no source. */
const COLDEST = 5;

/** A coolant temperature and the steady state that it leads to. */
interface Cooled {
  readonly temperature: number;
  readonly state: HeatState;
}

/**
 * What a coolant at the carrier must achieve in the long run: the search finds the warmest coolant
 * that meets each target through the conductance of the carrier. The heat it then takes up is the
 * heat to be removed, by whatever means.
 */
export function coolingVerdict(
  p: Parameters,
  store: CycleStore,
  last: Cycle,
  inAir: HeatState | null,
  { windingTarget, growthTarget }: LapseOptions,
): CoolingVerdict {
  const judge = (
    of: CoolingTarget['of'],
    limit: number,
    value: (state: HeatState) => number,
  ): CoolingTarget => {
    const metInAir = inAir !== null && value(inAir) <= limit;
    const coolant = metInAir ? null : coolantFor(p, store, last, (state) => value(state) - limit);
    return { of, limit, inAir: inAir && value(inAir), metInAir, coolant };
  };
  const targets = [
    judge('winding', windingTarget, ({ windingPeak }) => windingPeak),
    ...(growthTarget === null ? [] : [judge('growth', growthTarget, ({ growth }) => Math.abs(growth))]),
  ];
  // A coolant cold enough for the strictest target meets them all.
  const needs = targets.flatMap(({ coolant }) => coolant ?? []);
  const coldest = needs.sort((a, b) => a.temperature - b.temperature)[0];
  return {
    targets,
    chillerNeeded: coldest !== undefined && coldest.temperature < p.ambient,
    heat: coldest?.heat ?? 0,
    outOfReach: targets.filter((t) => !t.metInAir && t.coolant === null).map(({ of }) => of),
  };
}

/** Finds the warmest coolant at which the target is no longer exceeded. */
function coolantFor(
  p: Parameters,
  store: CycleStore,
  last: Cycle,
  excess: (state: HeatState) => number,
): CoolantNeed | null {
  const found = withFreshCycle(store, last, (cycle) => warmestCoolant(p, store, cycle, excess));
  if (found === null) return null;
  const { temperature, state } = found;
  const toScene = state.carrier - p.coolantTemperature;
  return {
    heat: state.sinkHeat,
    carrier: state.carrier,
    temperature,
    conductance: toScene > 0 ? (p.carrierToCoolant * (state.carrier - temperature)) / toScene : null,
  };
}

function warmestCoolant(
  p: Parameters,
  store: CycleStore,
  cycle: Cycle,
  excess: (state: HeatState) => number,
): Cooled | null {
  const settled = (temperature: number) =>
    steadyWith(
      { ...p, cooling: true, coolantTemperature: temperature },
      cycle,
      startTemperatures(p),
      coldForce(p, store),
    );
  const miss = (temperature: number) => {
    const state = settled(temperature);
    return state ? excess(state) : Number.MAX_VALUE;
  };
  // Growth is smallest at one coolant temperature and negative below it; losses that run away with
  // a warm coolant settle with a colder one.
  const best = minimum(miss, COLDEST, p.ambient);
  if (miss(best) > 0) return null;
  let warm = p.ambient;
  while (miss(warm) === Number.MAX_VALUE) warm = (warm + best) / 2;
  const temperature = miss(warm) > 0 ? root(miss, warm, best) : warm;
  const state = settled(temperature);
  return state && { temperature, state };
}
