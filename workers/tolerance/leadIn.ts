import type { Scene } from '../../shared/core/scene.ts';
import { type MachineResult, RUN_FIGURE_NAMES } from '../../shared/tolerance/runFigures.ts';
import { measureMachine } from './measureMachine.ts';

/** Cycles before the one that counts, at most: what swings for longer is part of the machine. */
const MAX = 3;
/** Figures of two cycles that differ by less than this share are those of the same state, or settling times by less than so many s. */
const SAME = 0.02;
const SAME_TIME = 1e-3;

type Figures = MachineResult['figures'];

interface SteadyCycle {
  /** Cycles to be left out. */
  readonly leadIn: number;
  /** What the cycle after them comes to. */
  readonly result: MachineResult;
}

/**
 * The first cycle of a scene that no longer shows how the axis was started: the first of all where it is as the second, as it is
 * for an axis at rest without a load on it.
 */
export function steadyCycle(scene: Scene): SteadyCycle {
  let before = measureMachine(scene, 0);
  for (let cycles = 0; cycles < MAX && before.trip === null; cycles++) {
    const next = measureMachine(scene, cycles + 1);
    if (next.trip === null && isSame(before.figures, next.figures)) return { leadIn: cycles, result: before };
    before = next;
  }
  return { leadIn: before.trip === null ? MAX : 0, result: before };
}

function isSame(a: Figures, b: Figures): boolean {
  return RUN_FIGURE_NAMES.every((name) => {
    const [x, y] = [a[name], b[name]];
    if (x === null || y === null) return x === y;
    const near = SAME * Math.max(Math.abs(x), Math.abs(y));
    return Math.abs(x - y) <= Math.max(near, name === 'settlingTime' ? SAME_TIME : 0);
  });
}
