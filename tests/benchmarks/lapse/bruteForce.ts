import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { Temperatures } from '../../../workers/model/state.ts';
import { Axis } from '../../../workers/run/axis.ts';

/** One span of a run of the full model. */
export interface Span {
  /** s */
  readonly time: number;
  /** At its start, °C. */
  readonly temperatures: Temperatures;
  /** Slope of motor force over current, N/A of amplitude. */
  readonly forcePerAmp: number;
  /** What the encoder does not see of the error at the tool, at the end of the last dwell at the far end of a shuttle, m; and when, s. */
  readonly unseen: number;
  readonly unseenTime: number;
}

/** The full model from one of these times to the next, s, the first of them 0. */
export function bruteForce(scene: Scene, times: readonly number[]): Span[] {
  const axis = new Axis(scene);
  return times.slice(1).map((end) => runSpan(axis, Math.round(end * scene.parameters.currentRate)));
}

/** The same scene as warm as the room, with heat capacities that nothing warms. */
export function heldCold(scene: Scene): Scene {
  const { ambient } = scene.parameters;
  const cold = { ...scene.parameters, windingStart: ambient, carrierStart: ambient };
  return withCapacities({ ...scene, parameters: cold }, () => Infinity);
}

/** Heat capacities divided: minutes become seconds, and everything else stays. */
export function hastened(scene: Scene, factor: number): Scene {
  return withCapacities(scene, (capacity) => capacity / factor);
}

function withCapacities(scene: Scene, change: (capacity: number) => number): Scene {
  const p = scene.parameters;
  return {
    ...scene,
    parameters: {
      ...p,
      windingCapacity: change(p.windingCapacity),
      carrierCapacity: change(p.carrierCapacity),
      tableCapacity: change(p.tableCapacity),
      screwCapacity: change(p.screwCapacity),
    },
  };
}

function runSpan(axis: Axis, end: number): Span {
  const { time } = axis;
  let temperatures: Temperatures | null = null;
  let [product, squares, unseen, unseenTime] = [0, 0, Number.NaN, Number.NaN];
  while (axis.tick < end) {
    if (!axis.step()) throw new Error(axis.trip?.kind);
    const r = axis.record;
    temperatures ??= {
      winding: at(r, C.windingTemperature),
      carrier: at(r, C.carrierTemperature),
      table: at(r, C.tableTemperature),
      screw: at(r, C.screwTemperature),
    };
    product += at(r, C.motorForce) * at(r, C.forceCurrent);
    squares += at(r, C.forceCurrent) ** 2;
    if (axis.set.segment % 4 === 1) {
      unseen = at(r, C.toolError) - at(r, C.followingError);
      unseenTime = at(r, C.time);
    }
  }
  return { time, temperatures: temperatures!, forcePerAmp: product / squares, unseen, unseenTime };
}
