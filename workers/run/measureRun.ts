import { CHANNEL_INDEX as C } from '../../shared/channels.ts';
import type { MoveFigures, Trip } from '../../shared/protocol.ts';
import type { Scene } from '../../shared/scene.ts';
import { Axis } from '../axis.ts';
import { MoveMeter } from './moveMeter.ts';
import { Tally } from './tally.ts';

/** What a run came to. SI. */
export interface RunSummary {
  readonly title: string;
  readonly simulatedTime: number;
  readonly trip: Trip | null;
  readonly peakFollowingError: number;
  readonly rmsFollowingError: number;
  readonly peakToolError: number;
  /** Worst settling time of all moves; null when a move did not settle or none was made. */
  readonly settlingTime: number | null;
  readonly rmsForce: number;
  readonly peakForce: number;
  readonly rmsCurrent: number;
  readonly peakCurrent: number;
  readonly peakVoltage: number;
  /** Mean copper loss, W. */
  readonly copperLoss: number;
  readonly windingTemperature: number;
  readonly carrierTemperature: number;
  readonly tableTemperature: number;
  readonly screwTemperature: number;
  readonly energyIn: number;
  readonly energyResidual: number;
  readonly moves: readonly MoveFigures[];
}

/** Runs a scene for `seconds` of simulated time; `onSample` sees the record of every position-loop sample. */
export function measureRun(
  scene: Scene,
  seconds: number,
  onSample: (record: Float64Array) => void = () => {},
): RunSummary {
  const axis = new Axis(scene);
  const meter = new MoveMeter();
  const moves: MoveFigures[] = [];
  const p = axis.parameters;
  const ticks = Math.round(seconds * p.currentRate);
  const [error, tool, force, current, voltage] = [
    new Tally(),
    new Tally(),
    new Tally(),
    new Tally(),
    new Tally(),
  ];

  while (axis.tick < ticks) {
    const samplesNow = axis.atPositionSample;
    if (!axis.step()) break;
    const r = axis.record;
    force.add(r[C.motorForce]!);
    current.add(Math.hypot(r[C.forceCurrent]!, r[C.fieldCurrent]!));
    voltage.add(r[C.voltage]!);
    if (!samplesNow) continue;
    error.add(r[C.followingError]!);
    tool.add(r[C.toolError]!);
    onSample(r);
    meter.sample(r, axis.set.moving, axis.set.cycle, p.window, axis.audit.copper);
    if (meter.last && meter.count > moves.length) moves.push(meter.last);
  }
  meter.finish(axis.time, axis.audit.copper);
  if (meter.last && meter.count > moves.length) moves.push(meter.last);

  const settled = moves.map((move) => move.settlingTime);
  const r = axis.record;
  return {
    title: scene.title,
    simulatedTime: axis.time,
    trip: axis.trip,
    peakFollowingError: error.peak,
    rmsFollowingError: error.rms,
    peakToolError: tool.peak,
    settlingTime: settled.length === 0 || settled.includes(null) ? null : Math.max(...(settled as number[])),
    rmsForce: force.rms,
    peakForce: force.peak,
    rmsCurrent: current.rms,
    peakCurrent: current.peak,
    peakVoltage: voltage.peak,
    copperLoss: axis.time > 0 ? axis.audit.copper / axis.time : 0,
    windingTemperature: r[C.windingTemperature]!,
    carrierTemperature: r[C.carrierTemperature]!,
    tableTemperature: r[C.tableTemperature]!,
    screwTemperature: r[C.screwTemperature]!,
    energyIn: axis.audit.in,
    energyResidual: axis.audit.relativeResidual,
    moves,
  };
}
