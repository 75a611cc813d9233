import { at, valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../../shared/core/channels.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { batchSolver, type NewSolver, odexSolver } from '../../../workers/solver/engine.ts';
import { TickSolver } from '../../../workers/solver/tickSolver.ts';
import { tolerances } from '../../../workers/solver/tolerances.ts';

/** odex at its tightest: a thousandth of the tolerances of a live run, which leaves three digits to the rounding of a position. */
const tightest: NewSolver = (plant, p, span) => {
  const { relative, absolute } = tolerances(p, plant.size);
  const tighter = (list: number[]) => list.map((each) => each / 1000);
  const solver = new TickSolver(plant.listDerivative, span, tighter(relative), tighter(absolute));
  return {
    engine: 'odex',
    advance(from, to, store) {
      solver.advance(from, to);
      plant.storeInto(to, store);
    },
  };
};

interface Course {
  readonly axis: Axis;
  /** At each tick: m and A. */
  readonly table: Float64Array;
  readonly iq: Float64Array;
  readonly id: Float64Array;
  readonly ticks: number;
  /** m and A. */
  readonly peakError: number;
  readonly peakCurrent: number;
}

function courseOf(scene: Scene, seconds: number, solver: NewSolver): Course {
  const axis = new Axis(scene, { solver });
  const most = Math.round(seconds * scene.parameters.currentRate);
  const [table, iq, id] = [new Float64Array(most), new Float64Array(most), new Float64Array(most)];
  let [ticks, peakError, peakCurrent] = [0, 0, 0];
  while (ticks < most && axis.step()) {
    const { record } = axis;
    table[ticks] = valueAt(record, C.tablePosition);
    iq[ticks] = valueAt(record, C.forceCurrent);
    id[ticks] = valueAt(record, C.fieldCurrent);
    peakError = Math.max(peakError, Math.abs(valueAt(record, C.followingError)));
    peakCurrent = Math.max(peakCurrent, Math.hypot(at(iq, ticks), at(id, ticks)));
    ticks++;
  }
  return { axis, table, iq, id, ticks, peakError, peakCurrent };
}

/** Largest deviations from a reference, as shares of what is allowed: 5 nm or 0.1 % of the peak error, and 0.2 % of the peak current. */
function deviation(from: Course, of: Course): { readonly table: number; readonly current: number } {
  let [table, current] = [0, 0];
  for (let k = 0; k < Math.min(from.ticks, of.ticks); k++) {
    table = Math.max(table, Math.abs(at(of.table, k) - at(from.table, k)));
    current = Math.max(current, Math.hypot(at(of.iq, k) - at(from.iq, k), at(of.id, k) - at(from.id, k)));
  }
  return {
    table: table / Math.max(5e-9, 1e-3 * from.peakError),
    // A drive that is off has no current, and none is what it must be.
    current: current === 0 ? 0 : current / (2e-3 * from.peakCurrent),
  };
}

/** Without rounding, which makes a whole encoder count out of a femtometre at its edge: the next current then differs, in either engine. */
const unrounded = (scene: Scene): Scene => ({
  ...scene,
  parameters: { ...scene.parameters, encoderResolution: 0, motorEncoderResolution: 0 },
});

/** What a scene comes to by the batch engine and by odex as it runs live, each against odex at its tightest. */
export function compared(given: Scene, seconds: number) {
  const scene = unrounded(given);
  const reference = courseOf(scene, seconds, tightest);
  const live = courseOf(scene, seconds, odexSolver);
  const batch = courseOf(scene, seconds, batchSolver);
  return {
    live: deviation(reference, live),
    batch: deviation(reference, batch),
    ticks: [reference.ticks, batch.ticks] as const,
    trips: [reference.axis.trip?.kind, batch.axis.trip?.kind] as const,
    energyHolds: batch.axis.audit.holds,
    engine: batch.axis.engine,
  };
}

export const isWithin = ({ table, current }: ReturnType<typeof deviation>) => table < 1 && current < 1;
