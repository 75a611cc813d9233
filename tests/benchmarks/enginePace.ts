import { SCENES } from '../../scenes/index.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { Axis } from '../../workers/run/axis.ts';
import { batchSolver, type NewSolver, odexSolver } from '../../workers/solver/engine.ts';
import { NativeAxis } from './native/nativeAxis.ts';
import { processorClock } from './processorClock.ts';

export interface EnginePace {
  readonly name: string;
  /** Simulated seconds per second of the processor. */
  readonly live: number;
  readonly batch: number;
  /** The same of the program in C; null where there is no compiler. */
  readonly native: number | null;
  /** How far its table ends from that of the batch engine, m. */
  readonly apart: number | null;
}

/** Rounds of which the best counts, in turn, so that all of them meet the same disturbances of the computer. */
const ROUNDS = 5;

/** The engines and the program in C, each scene by all of them in turn. `sources`: folder of the program. */
export function enginePace(sources: string, seconds = 1): EnginePace[] {
  const native = NativeAxis.compiled(sources);
  const scenes = SCENES.map(cold);
  for (const scene of scenes) for (const solver of [odexSolver, batchSolver]) timed(scene, solver, 0.3);
  try {
    return scenes.map((scene) => {
      const setpoints = setpointsOf(scene, seconds);
      const p = scene.parameters;
      const best = { live: 0, batch: 0, native: 0 };
      let apart = 0;
      for (let round = 0; round < ROUNDS; round++) {
        best.live = Math.max(best.live, timed(scene, odexSolver, seconds).pace);
        const batch = timed(scene, batchSolver, seconds);
        best.batch = Math.max(best.batch, batch.pace);
        if (!native) continue;
        const run = native.run(p, Math.round(seconds * p.currentRate), setpoints);
        best.native = Math.max(best.native, seconds / run.seconds);
        apart = Math.abs(run.table - batch.table);
      }
      const name = scene.id ?? scene.title;
      return native ? { name, ...best, apart } : { name, ...best, native: null, apart: null };
    });
  } finally {
    native?.remove();
  }
}

/** As it is, but that nothing warms up: the program in C has no heat. */
export function cold(scene: Scene): Scene {
  const held = { windingCapacity: Infinity, carrierCapacity: Infinity, tableCapacity: Infinity };
  const { parameters: p } = scene;
  return { ...scene, parameters: { ...p, ...held, screwCapacity: Infinity, ambient: p.carrierStart } };
}

/** Pace of the processor and where the table ends, m. */
export function timed(scene: Scene, solver: NewSolver, seconds: number): { pace: number; table: number } {
  const axis = new Axis(scene, { solver });
  const ticks = Math.round(seconds * scene.parameters.currentRate);
  const clock = processorClock();
  while (axis.tick < ticks && axis.step());
  const taken = clock();
  // One tick more records where the last one ended.
  axis.step();
  return { pace: seconds / taken, table: axis.record[C.tablePosition] ?? Number.NaN };
}

/** What the program commands at every position-loop sample. */
export function setpointsOf(scene: Scene, seconds: number): number[] {
  const axis = new Axis(scene, { solver: batchSolver });
  const ticks = Math.round(seconds * scene.parameters.currentRate);
  const list: number[] = [];
  while (axis.tick < ticks) {
    const samples = axis.atPositionSample;
    if (!axis.step()) break;
    const { position, speed, acceleration, force } = axis.set;
    if (samples) list.push(position, speed, acceleration, force);
  }
  return list;
}
