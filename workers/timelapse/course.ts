import { at } from '../../shared/core/at.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import type { Course, HeatState, LapseOptions, LapseSample } from '../../shared/protocol/timeLapse.ts';
import { BLEND } from '../control/currentLimit.ts';
import { overTemperature } from '../control/trips.ts';
import { startTemperatures } from '../model/heat.ts';
import type { Temperatures } from '../model/state.ts';
import { type Cycle, forceFactor } from './cycle.ts';
import { CycleMap } from './cycleMap.ts';
import { type CycleStore, isTrip, movedBetween } from './cycleStore.ts';
import { heatState } from './heatState.ts';
import { steadyWith, withFreshCycle } from './steady.ts';

/** A time that is a whole number of cycles may differ from it by rounding. */
const ROUNDING = 1e-9;

/** A course and the last cycle that was run in it; null when not even the first could be run. */
interface CourseRun {
  readonly course: Course;
  readonly last: Cycle | null;
}

/**
 * Hours of duty from the initial temperatures on, in steps of whole cycles. A step ends at a
 * sample, before resistance or flux has changed by more than the refresh fraction, and at the cycle
 * in which the winding passes a limit.
 */
export function runCourse(
  p: Parameters,
  store: CycleStore,
  { hours, refreshFraction, sampleEvery }: LapseOptions,
  onProgress: (share: number) => void,
): CourseRun {
  const end = hours * 3600;
  const samples: LapseSample[] = [];
  let t: Temperatures = startTemperatures(p);
  let time = 0;
  let nextSample = 0;
  let overload = 0;
  let hotTime: number | null = null;
  let overloadTime: number | null = null;
  let trip: Trip | null = null;
  let last: Cycle | null = null;

  for (;;) {
    signOfLife();
    const cycle = store.at(t, overloadTime !== null);
    if (isTrip(cycle)) {
      trip = { ...cycle, time };
      break;
    }
    last = cycle;
    const map = new CycleMap(p, cycle, t);
    const state = heatState(p, cycle, map, t, coldForce(p, store));
    const isOver = time >= end - ROUNDING || state.windingPeak >= p.windingLimit;
    if (state.windingPeak > p.foldbackTemperature) hotTime ??= time;
    if (cycle.overloaded) overloadTime ??= time;
    if (time >= nextSample - ROUNDING || isOver) {
      samples.push({ time, ...state });
      nextSample = (Math.floor(time / sampleEvery + ROUNDING) + 1) * sampleEvery;
      onProgress(Math.min(time / end, 1));
    }
    if (isOver) {
      if (state.windingPeak >= p.windingLimit) trip = overTemperature(p.windingLimit, time);
      break;
    }

    const untilSample = (Math.min(nextSample, end) - time) / cycle.duration;
    const perCycle = overloadRate(p, cycle, t) * cycle.duration;
    const untilFoldback =
      perCycle > 0 && overloadTime === null ? (1 - BLEND - overload) / perCycle : Infinity;
    let cycles = Math.max(1, Math.ceil(Math.min(untilSample, untilFoldback) - ROUNDING));
    let next = map.after(t, cycles);
    while (cycles > 1 && goesTooFar(p, state, next, refreshFraction)) {
      cycles = Math.floor(cycles / 2);
      next = map.after(t, cycles);
    }
    t = next;
    time += cycles * cycle.duration;
    overload = Math.max(overload + cycles * perCycle, 0);
    if (overload >= 1 - BLEND - ROUNDING) overloadTime ??= time;
  }
  onProgress(1);
  const course = { cooling: p.cooling, samples, trip, hotTime, overloadTime };
  return { course: { ...course, steady: last && steadyState(p, store, last, t) }, last };
}

/** The steady state in the long run. */
function steadyState(p: Parameters, store: CycleStore, last: Cycle, near: Temperatures): HeatState | null {
  const found = withFreshCycle(store, last, (cycle) => {
    const state = steadyWith(p, cycle, near, coldForce(p, store));
    return state && { state };
  });
  return found?.state ?? null;
}

/** Force per ampere with everything at ambient temperature, N/A. */
export function coldForce(p: Parameters, store: CycleStore): number {
  const first = at(store.cycles, 0);
  return first.forcePerAmp * forceFactor(p, first, p.ambient);
}

/** w', the mean rate over a cycle at which the overload allowance is used, 1/s. */
function overloadRate(p: Parameters, cycle: Cycle, t: Temperatures): number {
  const extra = p.peakCurrent ** 2 - p.continuousCurrent ** 2;
  if (extra <= 0) return 0;
  const current = cycle.rmsCurrent / forceFactor(p, cycle, t.carrier);
  return (current ** 2 - p.continuousCurrent ** 2) / (extra * p.overloadTime);
}

function goesTooFar(p: Parameters, state: HeatState, next: Temperatures, fraction: number): boolean {
  const peak = next.winding + state.windingPeak - state.winding;
  const passes = (limit: number) => state.windingPeak < limit !== peak < limit;
  return movedBetween(p, state, next) > fraction || passes(p.foldbackTemperature) || passes(p.windingLimit);
}
