import type { Scene } from '../../shared/core/scene.ts';
import { type LapseOptions, lapseDefaults, type TimeLapse } from '../../shared/protocol/timeLapse.ts';
import { coolingVerdict } from './coolingVerdict.ts';
import { runCourse } from './course.ts';
import { CycleStore } from './cycleStore.ts';
import { dutyVerdict } from './dutyVerdict.ts';

/**
 * Hours of a scene's duty. Electrical and mechanical processes take milliseconds, heating takes
 * tens of minutes: so the real axis is run for one cycle of its program, and its losses, as
 * functions of temperature, drive the thermal network over many cycles at a step. The axis is run
 * again when resistance, flux or a binding current limit has changed by more than the refresh
 * fraction. All of it is repeated with the cooling switched the other way.
 *
 * @param onProgress receives the share that is done, 0 to 1
 * @throws RangeError when one cycle of the program is too long to be run
 */
export function timeLapse(
  scene: Scene,
  options: Partial<LapseOptions> = {},
  onProgress: (share: number) => void = () => {},
): TimeLapse {
  const { parameters: p } = scene;
  const all = { ...lapseDefaults(p), ...options };
  const store = new CycleStore(scene, all.refreshFraction);
  const asSet = runCourse(p, store, all, (share) => onProgress(share / 2));
  const other = { ...p, cooling: !p.cooling };
  const switched = runCourse(other, store, all, (share) => onProgress((1 + share) / 2));
  const inAir = p.cooling ? switched.course : asSet.course;
  return {
    title: scene.title,
    hours: all.hours,
    cycleTime: store.cycleTime,
    measurements: store.cycles.length,
    asSet: asSet.course,
    switched: switched.course,
    duty: dutyVerdict(p, asSet.course, asSet.last),
    cooling: asSet.last && coolingVerdict(p, store, asSet.last, inAir.steady, all),
  };
}
