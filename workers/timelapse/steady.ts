import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { HeatState } from '../../shared/protocol/timeLapse.ts';
import type { Temperatures } from '../model/state.ts';
import type { Cycle } from './cycle.ts';
import { CycleMap } from './cycleMap.ts';
import { type CycleStore, isTrip } from './cycleStore.ts';
import { heatState } from './heatState.ts';

/**
 * Temperatures that change by less than this from one linearisation to the next have settled, K.
 */
const SETTLED = 1e-6;
const MAX_ROUNDS = 20;

/** Largest number of repetitions with a cycle measured at the temperatures found. */
const MAX_REFRESHES = 6;

/**
 * The steady state when the axis repeats this cycle; null when the losses outgrow the heat flow.
 */
export function steadyWith(p: Parameters, cycle: Cycle, near: Temperatures, cold: number): HeatState | null {
  let t = near;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const map = new CycleMap(p, cycle, t);
    const found = map.fixedPoint(p);
    if (found === null) return null;
    const last = t;
    t = found;
    if (Math.abs(t.winding - last.winding) < SETTLED && Math.abs(t.carrier - last.carrier) < SETTLED)
      return heatState(p, cycle, map, t, cold);
  }
  return null;
}

/**
 * The result of `find` with a cycle measured at the temperatures that it finds: `find` is repeated
 * until its result lies within the refresh fraction of the measurement, or the axis cannot be run
 * there.
 */
export function withFreshCycle<T extends { readonly state: HeatState }>(
  store: CycleStore,
  first: Cycle,
  find: (cycle: Cycle) => T | null,
): T | null {
  let cycle = first;
  let found = find(cycle);
  for (let k = 0; k < MAX_REFRESHES && found !== null; k++) {
    const fresh = store.at(found.state, cycle.folded);
    if (isTrip(fresh) || fresh === cycle) break;
    cycle = fresh;
    found = find(cycle);
  }
  return found;
}
