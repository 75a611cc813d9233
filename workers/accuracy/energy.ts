import type { Scene } from '../../shared/core/scene.ts';
import type { EnergyFlow } from '../../shared/protocol/accuracy.ts';
import { Axis, type AxisStart } from '../run/axis.ts';
import { tripOf } from '../run/tripOf.ts';
import { batchSolver } from '../solver/engine.ts';
import { cycleSpan } from '../timelapse/cycleSpan.ts';
import { TrippedError } from './testAxis.ts';

/** Running sums of the energy account, with the time and the cycles they cover. */
type Account = Omit<EnergyFlow, 'cycleTime'> & { readonly time: number; readonly cycles: number };

/**
 * Where the energy of one cycle of the program goes, including that of the process: the mean of the
 * whole cycles that follow at least a second of settling. drawn = returned + losses + work +
 * stored, to a millionth of the energy drawn.
 *
 * @throws RangeError when a cycle is too long to be run
 */
export function energyFlow(scene: Scene, start: AxisStart = {}): EnergyFlow {
  const axis = new Axis(scene, { ...start, solver: batchSolver });
  const { settle, measure } = cycleSpan(scene);
  runTo(axis, settle);
  const before = account(axis);
  runTo(axis, settle + measure);
  const after = account(axis);
  // A program without cycles counts as one.
  const cycles = Math.max(after.cycles - before.cycles, 1);
  const perCycle = (name: keyof Account) => (after[name] - before[name]) / cycles;
  return {
    cycleTime: perCycle('time'),
    drawn: perCycle('drawn'),
    returned: perCycle('returned'),
    copper: perCycle('copper'),
    iron: perCycle('iron'),
    guide: perCycle('guide'),
    nut: perCycle('nut'),
    other: perCycle('other'),
    work: perCycle('work'),
    stored: perCycle('stored'),
  };
}

/** Runs until this many samples of the position loop are done. */
function runTo(axis: Axis, samples: number): void {
  const ticks = samples * axis.parameters.positionDivider;
  while (axis.tick < ticks) if (!axis.step()) throw new TrippedError(tripOf(axis));
}

function account({ audit, time, set }: Axis): Account {
  const { returned, copper, iron, guide, nut, other } = audit;
  return {
    time,
    cycles: set.cycle,
    drawn: audit.in + returned,
    returned,
    copper,
    iron,
    guide,
    nut,
    other,
    work: audit.out,
    stored: audit.storedChange - audit.set,
  };
}
