import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { worstFigure } from '../../shared/figures/moveFigures.ts';
import { cycleDuration } from '../../shared/motion/cycle.ts';
import type { MoveFigures, Trip } from '../../shared/protocol/axis.ts';
import type { MachineResult } from '../../shared/tolerance/runFigures.ts';
import { Axis } from '../run/axis.ts';
import { MoveMeter } from '../run/moveMeter.ts';
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
      if (cycleNow() > leadIn) break;
      run.sample(cycleNow() === leadIn);
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
  readonly #meter: MoveMeter;
  readonly #moves: MoveFigures[] = [];
  readonly #error = new Tally();
  readonly #current = new Tally();
  readonly #losses: MeanLosses;
  #isMeasuring = false;
  /** Moves that were begun before the cycle. */
  #before = 0;

  constructor(p: Parameters, axis: Axis) {
    this.#p = p;
    this.#axis = axis;
    this.#meter = new MoveMeter(p.start);
    this.#losses = new MeanLosses(p);
  }

  sample(isMeasuring: boolean): void {
    const { motion, command, audit, time } = this.#axis;
    this.#meter.sample(motion, command, this.#p.window, audit.copper);
    if (isMeasuring && !this.#isMeasuring) {
      this.#isMeasuring = true;
      this.#before = this.#meter.count;
      this.#losses.begin(time, audit);
    }
    this.#takeMove();
    if (!isMeasuring) return;
    this.#error.add(valueAt(motion, C.followingError));
    this.#losses.sample(valueAt(motion, C.motorSpeed));
  }

  period(): void {
    if (!this.#isMeasuring) return;
    const { current, forceCurrent } = this.#axis.effort;
    this.#current.add(current);
    this.#losses.period(forceCurrent);
  }

  result(): MachineResult {
    const { time, audit } = this.#axis;
    this.#meter.finish(time, audit.copper);
    this.#takeMove();
    return {
      trip: null,
      holds: audit.holds,
      figures: {
        settlingTime: worstFigure(this.#moves, 'settlingTime'),
        peakError: this.#error.peak,
        rmsError: this.#error.rms,
        peakCurrent: this.#current.peak,
        windingTemperature: steadyWinding(this.#p, this.#losses.over(time, audit)),
      },
    };
  }

  #takeMove(): void {
    const { count, last } = this.#meter;
    if (last && last.index >= this.#before && count > this.#before + this.#moves.length)
      this.#moves.push(last);
  }
}
