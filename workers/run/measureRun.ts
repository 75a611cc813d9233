import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { worstFigure } from '../../shared/figures/moveFigures.ts';
import type { Engine, MoveFigures, Trip } from '../../shared/protocol/axis.ts';
import { batchSolver, type NewSolver, odexSolver } from '../solver/engine.ts';
import { Axis } from './axis.ts';
import { MoveMeter } from './moveMeter.ts';
import { Tally } from './tally.ts';

/** What a run came to. SI. */
export interface RunSummary {
  readonly title: string;
  /** What integrated the plant. */
  readonly engine: Engine;
  readonly simulatedTime: number;
  readonly trip: Trip | null;
  readonly peakFollowingError: number;
  readonly rmsFollowingError: number;
  readonly peakToolError: number;
  /** The worst of all moves; null when none has the figure, and when a move did not settle. */
  readonly riseTime: number | null;
  readonly settlingTime: number | null;
  readonly overshoot: number | null;
  readonly velocityRipplePeak: number | null;
  readonly velocityRippleRms: number | null;
  readonly rmsForce: number;
  readonly peakForce: number;
  readonly rmsCurrent: number;
  readonly peakCurrent: number;
  readonly peakVoltage: number;
  /** The least of the whole run, as shared/figures/moveFigures.ts defines them. */
  readonly currentHeadroom: number;
  readonly voltageHeadroom: number;
  /** Mean copper loss, W. */
  readonly copperLoss: number;
  readonly windingTemperature: number;
  readonly carrierTemperature: number;
  readonly tableTemperature: number;
  readonly screwTemperature: number;
  readonly energyIn: number;
  readonly energyResidual: number;
  /** Whether the residual is within its bound. */
  readonly energyHolds: boolean;
  readonly moves: readonly MoveFigures[];
}

/** So many samples pass before a run that may end early is asked again: an answer takes longer than a sample does. */
const SAMPLES_BETWEEN = 16;

/** Runs a scene for `seconds` of simulated time; `onSample` sees the record of every position-loop sample. */
export function measureRun(
  scene: Scene,
  seconds: number,
  onSample?: (record: Float64Array) => void,
  solver: NewSolver = odexSolver,
): RunSummary {
  return measured(scene, seconds, solver, (axis) => onSample?.(axis.record));
}

/**
 * The same for a trial, of which many are made: by the batch engine.
 *
 * @param onSample sees of each record what `Axis.motion` has of it
 * @param goesOn ends the run with false; it is given the settling time, s, that the worst move has at least. Asked now and then, and at the
 * last sample
 */
export function measureTrial(
  scene: Scene,
  seconds: number,
  onSample?: (motion: Float64Array) => void,
  goesOn?: (minSettlingTime: number) => boolean,
): RunSummary {
  return measured(scene, seconds, batchSolver, (axis) => onSample?.(axis.motion), goesOn);
}

function measured(
  scene: Scene,
  seconds: number,
  solver: NewSolver,
  onSample: (axis: Axis) => void,
  goesOn: (minSettlingTime: number) => boolean = () => true,
): RunSummary {
  const axis = new Axis(scene, { solver });
  const meter = new MoveMeter(scene.parameters.start);
  const moves: MoveFigures[] = [];
  let settling = 0;
  const p = axis.parameters;
  const ticks = Math.round(seconds * p.currentRate);
  const lastSample = ticks - p.positionDivider;
  let samples = 0;
  const [tool, voltage] = [new Tally(), new Tally()];

  while (axis.tick < ticks) {
    const samplesNow = axis.atPositionSample;
    if (!axis.step()) break;
    const { effort } = axis;
    voltage.add(effort.voltage);
    if (samplesNow) {
      const r = axis.motion;
      tool.add(valueAt(r, C.toolError));
      onSample(axis);
      meter.sample(r, axis.command, p.window, axis.audit.copper);
      if (meter.last && meter.count > moves.length) {
        moves.push(meter.last);
        settling = Math.max(settling, meter.last.settlingTime ?? Number.POSITIVE_INFINITY);
      }
      const asks = samples++ % SAMPLES_BETWEEN === 0 || axis.tick > lastSample;
      if (asks && !goesOn(Math.max(settling, meter.minSettlingTime))) break;
    }
    meter.period(effort);
  }
  meter.finish(axis.time, axis.audit.copper);
  if (meter.last && meter.count > moves.length) moves.push(meter.last);

  const r = axis.record;
  const { error, force, current, currentUse, voltageUse } = meter.whole;
  return {
    title: scene.title,
    engine: axis.engine,
    simulatedTime: axis.time,
    trip: axis.trip,
    peakFollowingError: error.peak,
    rmsFollowingError: error.rms,
    peakToolError: tool.peak,
    riseTime: worstFigure(moves, 'riseTime'),
    settlingTime: worstFigure(moves, 'settlingTime'),
    overshoot: worstFigure(moves, 'overshoot'),
    velocityRipplePeak: worstFigure(moves, 'velocityRipplePeak'),
    velocityRippleRms: worstFigure(moves, 'velocityRippleRms'),
    rmsForce: force.rms,
    peakForce: force.peak,
    rmsCurrent: current.rms,
    peakCurrent: current.peak,
    peakVoltage: voltage.peak,
    currentHeadroom: 1 - currentUse.peak,
    voltageHeadroom: 1 - voltageUse.peak,
    copperLoss: axis.time > 0 ? axis.audit.copper / axis.time : 0,
    windingTemperature: valueAt(r, C.windingTemperature),
    carrierTemperature: valueAt(r, C.carrierTemperature),
    tableTemperature: valueAt(r, C.tableTemperature),
    screwTemperature: valueAt(r, C.screwTemperature),
    energyIn: axis.audit.in,
    energyResidual: axis.audit.relativeResidual,
    energyHolds: axis.audit.holds,
    moves,
  };
}
