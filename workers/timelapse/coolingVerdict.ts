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

/** Coolants are tried down to this, °C: far colder than any, and copper still follows its law. */
const COLDEST = -150;

/** A coolant temperature and what the axis settles to with it. */
interface Cooled {
  readonly temperature: number;
  readonly state: HeatState;
}

/**
 * What a coolant at the carrier must do in the long run: the warmest coolant is sought that keeps
 * each target through the conductance that the carrier has, and the heat it takes then is the heat
 * to be removed, however it is done.
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
    judge('growth', growthTarget, ({ growth }) => Math.abs(growth)),
  ];
  // A coolant cold enough for the strictest target keeps them all.
  const needs = targets.flatMap(({ coolant }) => coolant ?? []);
  const coldest = needs.sort((a, b) => a.temperature - b.temperature)[0];
  return {
    targets,
    chillerNeeded: coldest !== undefined && coldest.temperature < p.ambient,
    heat: coldest?.heat ?? 0,
    outOfReach: targets.filter((t) => !t.metInAir && t.coolant === null).map(({ of }) => of),
  };
}

/** Finds the warmest coolant at which the excess over a target is gone. */
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
    conductance: toScene > 0 ? (p.carrierToAir * (state.carrier - temperature)) / toScene : null,
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
  // Growth is least at some coolant, and overdone below it; what has no end in a warm coolant has
  // one in a colder.
  const best = minimum(miss, COLDEST, p.ambient);
  if (miss(best) > 0) return null;
  let warm = p.ambient;
  while (miss(warm) === Number.MAX_VALUE) warm = (warm + best) / 2;
  const temperature = miss(warm) > 0 ? root(miss, warm, best) : warm;
  const state = settled(temperature);
  return state && { temperature, state };
}
