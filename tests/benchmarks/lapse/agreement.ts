import { at as elementAt, present } from '../../../shared/core/at.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { LapseSample } from '../../../shared/protocol/timeLapse.ts';
import type { Temperatures } from '../../../workers/model/state.ts';
import { timeLapse } from '../../../workers/timelapse/timeLapse.ts';
import { bruteForce, heldCold } from './bruteForce.ts';

/** How a time-lapse stands to the full model over the same time, and what either took. */
export interface Agreement {
  /** Largest difference of any of the four temperatures at any span, K, and the largest rise there was. */
  readonly kelvin: number;
  readonly rise: number;
  /** Change of force per ampere at the end, share of the cold one: full model, and time-lapse. */
  readonly drift: readonly [full: number, lapse: number];
  /** Growth at the tool at the end, m. */
  readonly growth: readonly [full: number, lapse: number];
  /** How often the cycle was run. */
  readonly measurements: number;
  /** Time by the clock that was given, in its unit. */
  readonly took: readonly [full: number, lapse: number];
}

/** Compares `seconds` of duty in spans of at least `spanLength` s; `clock` may stand still. */
export function agreement(
  scene: Scene,
  seconds: number,
  spanLength: number,
  clock: () => number = () => 0,
): Agreement {
  const begun = clock();
  const lapse = timeLapse(scene, { hours: seconds / 3600, sampleEvery: spanLength });
  const lapsed = clock();
  const samples = lapse.asSet.samples;
  const times = samples.map(({ time }) => time);
  const run = bruteForce(scene, times);
  const done = clock();

  let [kelvin, rise] = [0, 0];
  run.forEach(({ temperatures }, k) => {
    for (const node of ['winding', 'carrier', 'table', 'screw'] as const satisfies (keyof Temperatures)[]) {
      kelvin = Math.max(kelvin, Math.abs(elementAt(samples, k)[node] - temperatures[node]));
      rise = Math.max(rise, temperatures[node] - scene.parameters.ambient);
    }
  });
  const last = present(run.at(-1));
  // The full model's force per ampere is that of its last span, the time-lapse's that of the cycle that begins at a sample.
  const middle = (present(times.at(-1)) + last.time - lapse.cycleTime) / 2;
  const cold = elementAt(bruteForce(heldCold(scene), [0, lapse.cycleTime, 2 * lapse.cycleTime]), 1);
  return {
    kelvin,
    rise,
    drift: [last.forcePerAmp / cold.forcePerAmp - 1, at(samples, 'forcePerAmp', middle) - 1],
    growth: [cold.unseen - last.unseen, at(samples, 'growth', last.unseenTime)],
    measurements: lapse.measurements,
    took: [done - lapsed, lapsed - begun],
  };
}

/** A figure of the time-lapse between two samples. */
function at(samples: readonly LapseSample[], figure: 'growth' | 'forcePerAmp', time: number): number {
  const k = Math.max(
    samples.findIndex((sample) => sample.time >= time),
    1,
  );
  const [before, after] = [elementAt(samples, k - 1), elementAt(samples, k)];
  const share = (time - before.time) / (after.time - before.time);
  return before[figure] + share * (after[figure] - before[figure]);
}
