import { dragForce } from '../../shared/axis/drag.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C, CHANNEL_COUNT } from '../../shared/core/channels.ts';
import type { Setpoint } from '../../shared/motion/setpoint.ts';
import type { Drive } from '../control/drive.ts';
import type { Sampled } from '../control/sampled.ts';
import type { Audit } from '../model/audit.ts';
import type { Plant } from '../model/plant.ts';
import { CURRENTS, newState, type State, type Temperatures, V1, V2, X1, X2 } from '../model/state.ts';

/** What the channels are read from. */
interface Observed {
  readonly plant: Plant;
  readonly drive: Drive;
  readonly set: Readonly<Setpoint>;
  readonly temperatures: Readonly<Temperatures>;
  readonly audit: Audit;
}

/**
 * Values of every channel at one sampling instant, in the order of CHANNELS, SI. Each channel is one line here. A record takes as long as
 * the integration of half a period, so it is worked out only when somebody asks for it, and its forces only when somebody asks for them;
 * until then the state of its instant is kept.
 */
export class Telemetry {
  /** Summed currents of the instant, A. */
  id = 0;
  iq = 0;

  readonly #record = new Float64Array(CHANNEL_COUNT);
  readonly #observed: Observed;
  /** Of the instant: whoever hands it over leaves it as it is until the next. */
  #y: Readonly<State>;
  #time = 0;
  #residual = 0;
  #hasMotion = false;
  #isComplete = false;

  constructor(observed: Observed) {
    this.#observed = observed;
    this.#y = newState(observed.plant.size);
  }

  /** What holds for all periods up to the next position-loop sample; `toolError` in m. */
  takeSample(toolError: number): void {
    const record = this.#record;
    const { drive, set, temperatures: t } = this.#observed;
    record[C.setpoint] = set.position;
    record[C.setSpeed] = set.speed;
    record[C.setAcceleration] = set.acceleration;
    record[C.encoderPosition] = drive.reading;
    record[C.followingError] = drive.error;
    record[C.toolError] = toolError;
    record[C.currentCommand] = drive.currentCommand;
    record[C.currentLimit] = drive.currentLimit;
    record[C.windingTemperature] = t.winding;
    record[C.carrierTemperature] = t.carrier;
    record[C.tableTemperature] = t.table;
    record[C.screwTemperature] = t.screw;
  }

  /** One period of the current loop: its state, and what was sampled of it. */
  takePeriod(y: Readonly<State>, { time, id, iq }: Readonly<Sampled>): void {
    this.#y = y;
    this.#time = time;
    this.id = id;
    this.iq = iq;
    this.#residual = this.#observed.audit.relativeResidual;
    this.#hasMotion = false;
    this.#isComplete = false;
  }

  /** The record in which forces, power and what belongs to the base need not be those of the instant. */
  get motion(): Float64Array {
    if (!this.#hasMotion) this.#takeMotion();
    return this.#record;
  }

  get record(): Float64Array {
    if (!this.#isComplete) this.complete();
    return this.#record;
  }

  /** Force of all motors, N. */
  get motorForce(): number {
    return this.#observed.plant.terms.windings.force(this.#y);
  }

  /** Amplitude, V. */
  get voltage(): number {
    const { voltageD, voltageQ } = this.#observed.plant.terms.windings;
    return Math.sqrt(voltageD ** 2 + voltageQ ** 2);
  }

  /** Works out the channels of the period, with the parameters as they are: to be called before they change. */
  complete(): void {
    const record = this.#record;
    const y = this.#y;
    const { plant } = this.#observed;
    const { windings, cogging, ironDrag, nutDrag, guide, process, hand, base } = plant.terms;
    const { id, iq } = this;
    this.#takeMotion();
    record[C.circulatingCurrent] = circulatingCurrent(y, plant.motors, id, iq);
    record[C.voltage] = this.voltage;
    record[C.motorForce] = this.motorForce;
    record[C.coggingForce] = cogging.force(y[X1]);
    record[C.guideForce] = guide.force(y);
    record[C.dragForce] = dragForce(ironDrag.drag, nutDrag.drag, y[V1]);
    record[C.processForce] = process.force;
    record[C.handForce] = hand.force(y);
    record[C.basePosition] = base.position(y);
    record[C.electricPower] = 1.5 * (windings.voltageD * id + windings.voltageQ * iq);
    record[C.energyResidual] = this.#residual;
    this.#isComplete = true;
  }

  #takeMotion(): void {
    const record = this.#record;
    const y = this.#y;
    record[C.time] = this.#time;
    record[C.motorPosition] = y[X1];
    record[C.motorSpeed] = y[V1];
    record[C.tablePosition] = y[X2];
    record[C.tableSpeed] = y[V2];
    record[C.forceCurrent] = this.iq;
    record[C.fieldCurrent] = this.id;
    this.#hasMotion = true;
  }
}

/** Largest deviation of one motor's current vector from the mean of all, A. */
function circulatingCurrent(y: Readonly<State>, motors: number, id: number, iq: number): number {
  if (motors === 1) return 0;
  let largest = 0;
  for (let k = CURRENTS; k < CURRENTS + 2 * motors; k += 2) {
    const deviation = Math.hypot(valueAt(y, k) - id / motors, valueAt(y, k + 1) - iq / motors);
    largest = Math.max(largest, deviation);
  }
  return largest;
}
