import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { worstOf } from '../../shared/figures/moveFigures.ts';
import { cycleDuration } from '../../shared/motion/cycle.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import type { MachineResult } from '../../shared/tolerance/runFigures.ts';
import { Axis } from '../run/axis.ts';
import { Settling } from '../run/settling.ts';
import { Tally } from '../run/tally.ts';
import { tripOf } from '../run/tripOf.ts';
import { batchSolver } from '../solver/engine.ts';
import { MeanLosses, steadyWinding } from './steadyWinding.ts';

/** A program without cycles is measured for so long, s. */
const WITHOUT_CYCLES = 1;

const NOTHING: MachineResult['figures'] = {
  settlingTime: null,
  peakError: null,
  rmsError: null,
  peakCurrent: null,
  windingTemperature: null,
};

/**
 * Runs one cycle of a machine by the batch engine, after `leadIn` cycles that do not count, and measures it. Temperatures are
 * held at where they start: what they come to in hours follows from the losses.
 */
export function measureMachine(scene: Scene, leadIn: number): MachineResult {
  const p = scene.parameters;
  const axis = new Axis({ ...scene, parameters: held(p) }, { solver: batchSolver });
  const run = new MeasuredCycle(p, axis);
  const isEndless = cycleDuration(p, scene.moves) === Infinity;
  const end = isEndless ? (leadIn + 1) * WITHOUT_CYCLES : Infinity;
  const cycleNow = () => (isEndless ? Math.floor(axis.time / WITHOUT_CYCLES) : axis.command.cycle);
  while (axis.time < end) {
    const samplesNow = axis.atPositionSample;
    if (!axis.step()) return tripped(tripOf(axis));
    if (samplesNow) {
      const cycle = cycleNow();
      if (cycle > leadIn) break;
      run.sample(cycle === leadIn);
    }
    run.period();
  }
  return run.result();
}

function tripped({ kind }: Trip): MachineResult {
  return { trip: kind, holds: true, figures: NOTHING };
}

/** With infinite heat capacities temperatures stay where they start. */
function held(p: Parameters): Parameters {
  const capacities = { windingCapacity: Infinity, carrierCapacity: Infinity, tableCapacity: Infinity };
  return { ...p, ...capacities, screwCapacity: Infinity };
}

class MeasuredCycle {
  readonly #p: Parameters;
  readonly #axis: Axis;
  readonly #settling = new Settling();
  /** Of the moves that end within the cycle or with it. */
  readonly #settlingTimes: (number | null)[] = [];
  readonly #error = new Tally();
  /** A² */
  #peakCurrentSquared = 0;
  readonly #losses: MeanLosses;
  #isMeasuring = false;

  constructor(p: Parameters, axis: Axis) {
    this.#p = p;
    this.#axis = axis;
    this.#losses = new MeanLosses(p);
  }

  sample(isMeasuring: boolean): void {
    const { motion, audit, time } = this.#axis;
    this.#takeMove(motion);
    if (!isMeasuring) return;
    if (!this.#isMeasuring) this.#losses.begin(time, audit);
    this.#isMeasuring = true;
    this.#error.add(valueAt(motion, C.followingError));
    this.#losses.sample(valueAt(motion, C.motorSpeed));
  }

  period(): void {
    if (!this.#isMeasuring) return;
    const { forceCurrent: iq, fieldCurrent: id } = this.#axis;
    this.#peakCurrentSquared = Math.max(this.#peakCurrentSquared, iq * iq + id * id);
    this.#losses.period(iq);
  }

  result(): MachineResult {
    const { time, audit } = this.#axis;
    this.#endMove();
    return {
      trip: null,
      holds: audit.holds,
      figures: {
        settlingTime: worstOf('settlingTime', this.#settlingTimes),
        peakError: this.#error.peak,
        rmsError: this.#error.rms,
        peakCurrent: Math.sqrt(this.#peakCurrentSquared),
        windingTemperature: steadyWinding(this.#p, this.#losses.over(time, audit)),
      },
    };
  }

  #takeMove(motion: Float64Array): void {
    const settling = this.#settling;
    const { command } = this.#axis;
    if (settling.begins(command)) {
      // At the first sample of the cycle it is the last move of the cycle before that ends.
      if (this.#isMeasuring) this.#endMove();
      settling.begin(valueAt(motion, C.time));
    }
    if (settling.isMeasuring) settling.take(motion, command, this.#p.window);
  }

  #endMove(): void {
    if (this.#settling.isMeasuring) this.#settlingTimes.push(this.#settling.time);
  }
}
