import { magnetFactor, resistanceFactor } from '../../shared/axis/temperature.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import { TemperatureFoldback } from '../control/currentLimit.ts';
import type { Temperatures } from '../model/state.ts';
import type { Cycle } from './cycle.ts';
import { type CycleSpan, cycleSpan } from './cycleSpan.ts';
import { measureCycle } from './measureCycle.ts';

/**
 * The cycles of one scene, measured at whatever temperatures they were needed. Coolant and ambient
 * act only through these temperatures, so one store serves the axis with and without cooling.
 */
export class CycleStore {
  readonly cycles: Cycle[] = [];
  readonly #scene: Scene;
  readonly #refreshFraction: number;
  readonly #span: CycleSpan;

  /** @throws RangeError when the cycle of the program is too long to be run */
  constructor(scene: Scene, refreshFraction: number) {
    this.#scene = scene;
    this.#refreshFraction = refreshFraction;
    this.#span = cycleSpan(scene);
  }

  /** s */
  get cycleTime(): number {
    const { positionDivider, currentRate } = this.#scene.parameters;
    return (this.#span.measure * positionDivider) / currentRate;
  }

  /**
   * The cycle at these temperatures: one that was measured close enough, or one that is run now. A
   * trip when the axis cannot run it.
   */
  at(t: Temperatures, folded: boolean): Cycle | Trip {
    const near = this.#nearest(t, folded);
    if (near !== null && moved(this.#scene.parameters, near, t) <= this.#refreshFraction) return near;
    const measured = measureCycle(this.#scene, this.#span, t, folded);
    if (!isTrip(measured)) this.cycles.push(measured);
    return measured;
  }

  #nearest(t: Temperatures, folded: boolean): Cycle | null {
    const { parameters: p } = this.#scene;
    let nearest: Cycle | null = null;
    for (const cycle of this.cycles) {
      if (cycle.folded !== folded) continue;
      if (nearest === null || moved(p, cycle, t) < moved(p, nearest, t)) nearest = cycle;
    }
    return nearest;
  }
}

export function isTrip(result: Cycle | Trip): result is Trip {
  return 'kind' in result;
}

/**
 * Largest relative change, between the measurement of a cycle and temperatures t, of what
 * determines it: resistance, flux, and the current limit where it binds. Friction does not depend
 * on temperature in this model.
 */
function moved(p: Parameters, cycle: Cycle, t: Temperatures): number {
  return Math.max(movedBetween(p, cycle.at, t), limitMoved(p, cycle, t));
}

/** The same for resistance and flux alone, from one state to another. */
export function movedBetween(p: Parameters, from: Temperatures, to: Temperatures): number {
  return Math.max(
    Math.abs(resistanceFactor(to.winding) / resistanceFactor(from.winding) - 1),
    Math.abs(magnetFactor(p, to.carrier) / magnetFactor(p, from.carrier) - 1),
  );
}

function limitMoved(p: Parameters, cycle: Cycle, t: Temperatures): number {
  const foldback = new TemperatureFoldback(p);
  const before = foldback.share(cycle.at.winding);
  const now = foldback.share(t.winding);
  // Of the limit as it was, a cycle that was not limited needs only its largest command.
  const needed = cycle.currentUse < 1 ? cycle.currentUse : Infinity;
  const [had, has] = [Math.min(1, needed), Math.min(now / before, needed)];
  return had > 0 ? Math.abs(has / had - 1) : 0;
}
