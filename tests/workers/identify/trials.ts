import { sceneById } from '../../../scenes/index.ts';
import { COPPER_ALPHA, motorConstants } from '../../../shared/axis/motor.ts';
import { at } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX, CHANNEL_NAMES, type ChannelName } from '../../../shared/core/channels.ts';
import type { ParameterChanges, Parameters } from '../../../shared/core/parameters/table.ts';
import { problemText } from '../../../shared/core/problem.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import { AS_WRITTEN } from '../../../shared/core/sentence.ts';
import type { FitResult, FittedName } from '../../../shared/protocol/fit.ts';
import type { Trace } from '../../../shared/protocol/trace.ts';
import { mapTrace, suggestMapping } from '../../../src/tuning/trace/traceFile.ts';
import { readTraceTable } from '../../../src/tuning/trace/traceTable.ts';
import { NormalNoise } from '../../../workers/control/noise.ts';
import { median, standardDeviation } from '../../../workers/math/statistics.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';

/** A scene of the shelf with changes. */
export function sceneWith(name: string, changes: ParameterChanges): Scene {
  const scene = sceneById(name);
  return { ...scene, parameters: { ...scene.parameters, ...changes } };
}

/** The trace of a run, through the text of its export. */
export function exportedTrace(scene: Scene, seconds: number): Trace {
  return traceOf(scene, seconds, CHANNEL_NAMES.join(','), (record) => record.join(','));
}

/** What a drive records to be fitted from, and how such columns are titled. */
const RECORDED: Partial<Record<ChannelName, string>> = {
  time: 'time (s)',
  setpoint: 'setpoint (m)',
  motorPosition: 'motor position (m)',
  tablePosition: 'table position (m)',
  encoderPosition: 'encoder position (m)',
  currentCommand: 'current command (A)',
  forceCurrent: 'current (A)',
};
const COLUMNS = Object.keys(RECORDED).map((name) => CHANNEL_INDEX[name as ChannelName]);

/** The same trace through the text of a recording that holds these columns only, which is a fraction of the text. */
export function recordedTrace(scene: Scene, seconds: number): Trace {
  return traceOf(scene, seconds, Object.values(RECORDED).join(','), (record) =>
    COLUMNS.map((column) => record[column]).join(','),
  );
}

function traceOf(
  scene: Scene,
  seconds: number,
  titles: string,
  row: (record: Float64Array) => string,
): Trace {
  const rows: string[] = [titles];
  const { trip } = measureRun(scene, seconds, (record) => void rows.push(row(record)));
  if (trip) throw new Error(trip.kind);
  const table = readTraceTable(`${rows.join('\n')}\n`);
  if ('problems' in table) throw new Error(problemText(at(table.problems, 0), AS_WRITTEN));
  const trace = mapTrace(table, suggestMapping(table), { count: 1e-9, ratedCurrent: 10 });
  if ('problems' in trace) throw new Error(problemText(at(trace.problems, 0), AS_WRITTEN));
  return trace;
}

/** The simulated drive knows its current and the motor's position exactly; a measured one does not. White noise, A and m rms. */
export function withSensorNoise(trace: Trace, current: number, position: number, seed: number): Trace {
  const noise = new NormalNoise(seed);
  const noisy = (values: Float64Array<ArrayBuffer>, rms: number) =>
    values.map((value) => value + rms * noise.next());
  return {
    ...trace,
    current: trace.current && noisy(trace.current, current),
    motorPosition: trace.motorPosition && noisy(trace.motorPosition, position),
    tablePosition: trace.tablePosition && noisy(trace.tablePosition, position),
  };
}

/** What a person might type before anything was measured: everything that is to be fitted is wrong. */
export function guessOf(p: Parameters): Parameters {
  return {
    ...p,
    tableMass: 0.7 * p.tableMass,
    payload: 0,
    frictionCoefficient: 0,
    sealFriction: 1,
    viscous: 1,
    counterbalance: 0,
    linkStiffness: 2 * p.linkStiffness,
  };
}

/** The values behind a run, put together by hand from MODEL.md: gravity 9.80665 m/s², friction above the Stribeck speed. */
export function truthsOf(p: Parameters): Record<FittedName, number> {
  const rotor = p.lead > 0 ? p.rotorInertia * ((2 * Math.PI) / p.lead) ** 2 : 0;
  const travelling = p.motorCount * p.coilMass + p.tableMass + p.payload;
  const normal = (p.tableMass + p.payload) * 9.80665 * Math.cos(p.inclination) + p.motorCount * p.attraction;
  return {
    mass: travelling + rotor,
    forceConstant: p.lead > 0 ? (p.torqueConstant * 2 * Math.PI) / p.lead : p.forceConstant,
    coulomb: p.frictionCoefficient * normal + p.sealFriction + p.nutDrag + p.motorCount * p.hysteresisDrag,
    viscous: p.viscous + p.nutViscous + p.motorCount * p.eddyDrag,
    bias: travelling * 9.80665 * Math.sin(p.inclination) - p.counterbalance,
    linkStiffness: p.linkStiffness,
    backlash: p.backlash,
    delay: currentDelay(p),
  };
}

/**
 * By how much the sampled current lags a command that rises evenly, s: the current loop of MODEL.md on a still motor, solved as difference
 * equations, with the winding exactly discretised (Franklin, Powell, Workman, Digital Control of Dynamic Systems, 4.3).
 */
function currentDelay(p: Parameters): number {
  const { resistance, inductance } = motorConstants(p);
  const step = 1 / p.currentRate;
  const omega = 2 * Math.PI * p.currentBandwidth;
  const warm = resistance * (1 + COPPER_ALPHA * (p.windingStart - 20));
  const stays = Math.exp((-warm / inductance) * step);
  let [current, integral, applied, lag] = [0, 0, 0, 0];
  for (let k = 0; k < 4000; k++) {
    const command = step * (k - (k % p.positionDivider));
    if (k % p.positionDivider === 0) lag = command - current;
    const error = command - current;
    integral += omega * resistance * step * error;
    const voltage = omega * inductance * error + integral;
    current = stays * current + ((1 - stays) / warm) * applied;
    applied = voltage;
  }
  return lag;
}

/** How many axes are recovered, and how many intervals have to hold the truth. */
export interface Extent {
  readonly trials: number;
  readonly minInside: number;
}

/** Below so many trials, the spread of their errors is too uncertain to judge the stated width by. */
export const ENOUGH_FOR_SPREAD = 50;

/** How often the intervals of many fits hold the truth, and how wide they are. */
export class Coverage {
  readonly trials: {
    inside: boolean;
    insideScatter: boolean;
    half: number;
    scatter: number;
    error: number;
  }[] = [];
  truth = 0;

  static of(results: readonly { fit: FitResult; truth: number }[], name: FittedName): Coverage {
    const coverage = new Coverage();
    for (const { fit, truth } of results) {
      const estimate = fit.estimates[name];
      if (!estimate) continue;
      coverage.truth = truth;
      const { value, low, high, scatter } = estimate;
      const error = value - truth;
      coverage.trials.push({
        inside: low <= truth && truth <= high,
        insideScatter: Math.abs(error) <= scatter,
        half: (high - low) / 2,
        scatter,
        error,
      });
    }
    return coverage;
  }

  get inside(): number {
    return this.trials.filter(({ inside }) => inside).length;
  }

  /** By the scatter of the trace alone, with nothing allowed for what was taken as known. */
  get insideScatter(): number {
    return this.trials.filter(({ insideScatter }) => insideScatter).length;
  }

  get medianHalf(): number {
    return median(this.trials.map(({ half }) => half));
  }

  /** Median of the stated half-width over the half-width that 95 % of a normal distribution of the errors' spread takes. */
  get honesty(): number {
    const spread = standardDeviation(this.trials.map(({ error }) => error));
    return median(this.trials.map(({ scatter }) => scatter)) / (1.96 * spread);
  }
}
