import { dragForce } from '../../shared/axis/drag.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { Setpoint } from '../../shared/motion/setpoint.ts';
import type { Drive } from '../control/drive.ts';
import type { Audit } from '../model/audit.ts';
import type { Plant } from '../model/plant.ts';
import { CURRENTS, type State, stateAt, type Temperatures, V1, V2, X1, X2 } from '../model/state.ts';

/** What the channels are read from. */
interface Observed {
  readonly plant: Plant;
  readonly y: Readonly<State>;
  readonly drive: Drive;
  readonly set: Readonly<Setpoint>;
  readonly temperatures: Readonly<Temperatures>;
  readonly audit: Audit;
}

/** Values of every channel at one sampling instant, in the order of CHANNELS, SI. Each channel is one line here. */
export class Telemetry {
  readonly record = new Float64Array(CHANNEL_COUNT);
  readonly #observed: Observed;

  constructor(observed: Observed) {
    this.#observed = observed;
  }

  /** @param toolError as of the last position-loop sample, m */
  fill(time: number, id: number, iq: number, toolError: number): void {
    const { record } = this;
    const { plant, y, drive, set, temperatures: t, audit } = this.#observed;
    const { windings, cogging, ironDrag, nutDrag, guide, process, hand, base } = plant.terms;
    record[C.time] = time;
    record[C.setpoint] = set.position;
    record[C.setSpeed] = set.speed;
    record[C.setAcceleration] = set.acceleration;
    record[C.motorPosition] = y[X1];
    record[C.motorSpeed] = y[V1];
    record[C.tablePosition] = y[X2];
    record[C.tableSpeed] = y[V2];
    record[C.encoderPosition] = drive.reading;
    record[C.followingError] = drive.error;
    record[C.toolError] = toolError;
    record[C.currentCommand] = drive.currentCommand;
    record[C.forceCurrent] = iq;
    record[C.fieldCurrent] = id;
    record[C.circulatingCurrent] = circulatingCurrent(y, plant.motors, id, iq);
    record[C.currentLimit] = drive.currentLimit;
    record[C.voltage] = Math.sqrt(windings.voltageD ** 2 + windings.voltageQ ** 2);
    record[C.motorForce] = windings.force(y);
    record[C.coggingForce] = cogging.force(y[X1]);
    record[C.guideForce] = guide.force(y);
    record[C.dragForce] = dragForce(ironDrag.drag, nutDrag.drag, y[V1]);
    record[C.processForce] = process.force;
    record[C.handForce] = hand.force(y);
    record[C.windingTemperature] = t.winding;
    record[C.carrierTemperature] = t.carrier;
    record[C.tableTemperature] = t.table;
    record[C.screwTemperature] = t.screw;
    record[C.basePosition] = base.position(y);
    record[C.electricPower] = 1.5 * (windings.voltageD * id + windings.voltageQ * iq);
    record[C.energyResidual] = audit.relativeResidual;
  }
}

/** Largest deviation of one motor's current vector from the mean of all, A. */
function circulatingCurrent(y: Readonly<State>, motors: number, id: number, iq: number): number {
  if (motors === 1) return 0;
  let largest = 0;
  for (let k = CURRENTS; k < CURRENTS + 2 * motors; k += 2) {
    const deviation = Math.hypot(stateAt(y, k) - id / motors, stateAt(y, k + 1) - iq / motors);
    largest = Math.max(largest, deviation);
  }
  return largest;
}
