import { sceneById } from '../../scenes/index.ts';
import { batchSolver } from '../../workers/solver/engine.ts';
import { cold, setpointsOf, timed } from './enginePace.ts';
import { NativeAxis, STIFF_METHODS } from './native/nativeAxis.ts';

export interface StiffPace {
  readonly method: string;
  /** Pace of the processor over that of the program in C with fixed steps. */
  readonly overC: number;
  /** Derivatives asked for in a period of the current loop. */
  readonly evaluations: number;
  /** How far its table ends from that of the batch engine, m. */
  readonly apart: number;
}

/** Simulated time, s: LSODA takes a hundred times as long as it, Radau some thousand times. */
const SECONDS = { LSODA: 0.1, Radau: 0.01 } as const;

/** The opening scene by stiff solvers of SciPy; null where there is no compiler or no SciPy. */
export function stiffPace(sources: string): StiffPace[] | null {
  const native = NativeAxis.compiled(sources);
  if (!native) return null;
  const scene = cold(sceneById('mould-shuttle'));
  const { parameters: p } = scene;
  try {
    const setpoints = setpointsOf(scene, 1);
    const fixed = 1 / native.run(p, p.currentRate, setpoints).seconds;
    const paces: StiffPace[] = [];
    for (const method of STIFF_METHODS) {
      const seconds = SECONDS[method];
      const run = native.runStiff(method, p, Math.round(seconds * p.currentRate), setpoints);
      if (!run) return null;
      const { table } = timed(scene, batchSolver, seconds);
      const { evaluations } = run;
      paces.push({
        method,
        overC: seconds / run.seconds / fixed,
        evaluations,
        apart: Math.abs(run.table - table),
      });
    }
    return paces;
  } finally {
    native.remove();
  }
}
