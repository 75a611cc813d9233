import { motorConstants } from '../shared/axis/motor.ts';
import { CHANNEL_COUNT, CHANNEL_INDEX } from '../shared/core/channels.ts';
import type { ParameterChanges, Parameters } from '../shared/core/parameters/table.ts';
import type { Scene } from '../shared/core/scene.ts';
import { standAt } from '../shared/motion/setpoint.ts';
import type { Notice, Trip } from '../shared/protocol/axis.ts';
import { Program } from './command/program.ts';
import { newProgramOutput } from './command/setpoint.ts';
import { CurrentLimit } from './control/currentLimit.ts';
import { CurrentLoop } from './control/currentLoop.ts';
import { Encoder } from './control/encoder.ts';
import { Notices } from './control/notices.ts';
import { OscillationWatch } from './control/oscillation.ts';
import { PositionLoop } from './control/positionLoop.ts';
import { checkTrips } from './control/trips.ts';
import { Audit } from './model/audit.ts';
import { armGrowth } from './model/growth.ts';
import { HeatNetwork, type Losses, startTemperatures } from './model/heat.ts';
import { Plant } from './model/plant.ts';
import { processForce } from './model/process.ts';
import { CURRENTS, type Temperatures, V1, V2, X1, X2, Z } from './model/state.ts';
import { DivergedError, TickSolver } from './solver/tickSolver.ts';
import { tolerances } from './solver/tolerances.ts';

const C = CHANNEL_INDEX;

/** An axis that has been at work already: as warm as this instead of as its parameters say, with so much of its overload allowance gone. */
export interface AxisStart {
  readonly temperatures?: Temperatures;
  readonly overload?: number;
}

/**
 * One machine axis under its controller: owns the timing rule and nothing else. Pure and deterministic: the same scene and the
 * same calls at the same ticks give bit-identical records.
 *
 * At each t = n·Ts, in this order, because a real drive can do it in no other:
 *
 * 1. the summed currents are sampled;
 * 2. at every n_p-th period: changes are applied, the program advances, the encoder is read, the position loop gives i_q*;
 * 3. the current loop computes a voltage that will be applied one period later;
 * 4. the plant is integrated to the next edge under the voltage computed one period earlier.
 */
export class Axis {
  /** Current-loop periods done. */
  tick = 0;
  trip: Trip | null = null;
  /** Every channel as of the last tick's sampling instant, in the order of CHANNELS, SI. */
  readonly record = new Float64Array(CHANNEL_COUNT);
  /** What the program commands, as of the last position-loop sample. */
  readonly set = newProgramOutput();
  readonly audit: Audit;

  private p: Parameters;
  private readonly program: Program;
  private readonly plant: Plant;
  private readonly solver: TickSolver;
  private readonly y: number[];
  private readonly scratch: number[];
  private readonly encoder: Encoder;
  private readonly positionLoop = new PositionLoop();
  private readonly currentLoop = new CurrentLoop();
  private readonly currentLimit: CurrentLimit;
  private readonly noticed = new Notices();
  private oscillation = new OscillationWatch();
  private readonly heat: HeatNetwork;
  private readonly period: number;
  private readonly booked: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };
  private readonly released: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };

  constructor(scene: Scene, start: AxisStart = {}) {
    const p = { ...scene.parameters };
    this.p = p;
    this.period = 1 / p.currentRate;
    this.heat = new HeatNetwork(start.temperatures ?? startTemperatures(p));
    this.currentLimit = new CurrentLimit(start.overload);
    this.plant = new Plant(p.motorCount, p.base);
    this.plant.configure(p, this.heat.temperatures);
    const { relative, absolute } = tolerances(p, this.plant.size);
    this.solver = new TickSolver(this.plant.derivative, this.period, relative, absolute);
    this.program = new Program(p, scene.moves);
    this.encoder = new Encoder(p.seed);
    this.positionLoop.configure(p);
    this.currentLoop.configure(p);
    this.y = this.plant.initialState(p.start);
    this.scratch = this.y.slice();
    this.audit = new Audit(this.plant.storedEnergy(this.y));
    this.recordStart(p);
  }

  get parameters(): Readonly<Parameters> {
    return this.p;
  }

  /** Simulated time of the next tick, s. */
  get time(): number {
    return this.tick * this.period;
  }

  /** True when the next tick samples the position loop: changes may be made now. */
  get atPositionSample(): boolean {
    return this.tick % this.p.positionDivider === 0;
  }

  /** What keeps the drive from doing as commanded. */
  get notices(): Notice[] {
    return this.noticed.at(this.time);
  }

  /** Takes checked changes. Call at a position-loop sample; parameters that need a restart need a new Axis. */
  change(changes: ParameterChanges): void {
    const driveBefore = this.p.drive;
    Object.assign(this.p, changes);
    if (this.p.drive !== driveBefore) this.switchDrive();
    this.program.setParameters(this.p);
    this.positionLoop.configure(this.p);
    this.currentLoop.configure(this.p);
    this.plant.configure(this.p, this.heat.temperatures);
    this.bookStored();
  }

  /** A hand takes hold at a position, m, or lets go with null. Call at a position-loop sample. */
  hand(position: number | null): void {
    this.plant.handHolds = position !== null;
    if (position !== null) this.plant.handPosition = position;
  }

  /** One current-loop period. Returns false, with nothing done or recorded, once tripped. */
  step(): boolean {
    if (this.trip) return false;
    const { p, plant, y } = this;
    const time = this.time;
    let id = 0;
    let iq = 0;
    for (let k = CURRENTS; k < CURRENTS + 2 * plant.motors; k += 2) {
      id += y[k]!;
      iq += y[k + 1]!;
    }
    const appliedD = this.currentLoop.voltageD;
    const appliedQ = this.currentLoop.voltageQ;
    if (this.tick % p.positionDivider === 0) {
      this.samplePosition(time, id * id + iq * iq);
      if (this.trip) return false;
    }
    if (p.drive === 'on') {
      this.currentLoop.step(this.positionLoop.currentCommand, id, iq, this.positionLoop.speedEstimate);
      if (this.currentLoop.limited) this.noticed.note('voltage', time);
    }
    plant.voltageD = appliedD;
    plant.voltageQ = appliedQ;
    plant.processForce = processForce(p, time, this.set.speed);
    this.fillRecord(time, id, iq);
    this.integrate(time);
    this.tick++;
    return true;
  }

  private samplePosition(time: number, currentSquared: number): void {
    const { p, y } = this;
    if (this.tick > 0) this.stepHeat();
    this.program.advance(time, this.set);
    const reading = this.encoder.read(
      p.encoderSide === 'load' ? y[X2]! : y[X1]!,
      p,
      this.heat.temperatures.table,
    );
    const { set } = this;
    this.currentLimit.step(
      p,
      this.period * p.positionDivider,
      currentSquared,
      this.heat.temperatures.winding,
    );
    let swinging = false;
    if (p.drive === 'on') {
      const limit = this.currentLimit.amplitude;
      this.positionLoop.step(p, set.position, set.speed, set.acceleration, set.force, reading, limit);
      if (this.positionLoop.limited) this.noticed.note('current', time);
      if (this.currentLimit.overloaded) this.noticed.note('overload', time);
      if (this.currentLimit.hot) this.noticed.note('heat', time);
      swinging = this.oscillation.step(time, this.limitReached);
    } else {
      this.positionLoop.observe(set.position, reading);
    }
    this.record[C.encoderPosition] = reading;
    this.record[C.toolError] = set.position - this.toolPosition;
    this.trip = checkTrips(
      p,
      time,
      this.positionLoop.error,
      y[X2]!,
      y[V2]!,
      this.heat.temperatures.winding,
      swinging,
    );
  }

  /** Which limit of current or voltage the drive is at: 1, −1, or 0 for none. */
  private get limitReached(): number {
    if (this.positionLoop.limited) return Math.sign(this.positionLoop.currentCommand);
    return this.currentLoop.limited ? Math.sign(this.currentLoop.voltageQ) : 0;
  }

  /** Where the tool stands: the table, and the growth of the arm between scale head and tool, m. */
  private get toolPosition(): number {
    const { p, y, heat } = this;
    return y[X2]! + armGrowth(p, heat.temperatures.table);
  }

  private stepHeat(): void {
    const { audit, booked, released } = this;
    released.copper = audit.copper - booked.copper;
    released.iron = audit.iron - booked.iron;
    released.guide = audit.guide - booked.guide;
    released.nut = audit.nut - booked.nut;
    booked.copper = audit.copper;
    booked.iron = audit.iron;
    booked.guide = audit.guide;
    booked.nut = audit.nut;
    this.heat.step(this.p, this.period * this.p.positionDivider, released, this.y[V1]!);
    this.plant.warm(this.p, this.heat.temperatures);
    this.bookStored();
  }

  /** Books what new parameters or temperatures did to the stored energy. */
  private bookStored(): void {
    this.audit.bookSet(this.plant.storedEnergy(this.y));
  }

  /** Enabling starts the loops afresh from where the table stands; disabling opens or shorts the windings. */
  private switchDrive(): void {
    if (this.p.drive === 'off') {
      for (let k = CURRENTS; k < CURRENTS + 2 * this.plant.motors; k++) this.y[k] = 0;
    }
    this.positionLoop.reset();
    this.currentLoop.reset();
    this.oscillation = new OscillationWatch();
    if (this.p.drive === 'on') this.program.resumeFrom(this.record[C.encoderPosition]!, this.time);
  }

  private integrate(time: number): void {
    try {
      this.solver.advance(this.y);
      this.audit.takeTick(this.y, this.plant.storedEnergy(this.y));
    } catch (error) {
      if (!(error instanceof DivergedError)) throw error;
      this.trip = { kind: 'divergence', time };
    }
  }

  /** What there is to see before the first tick: the axis at rest where its program starts. */
  private recordStart(p: Parameters): void {
    standAt(p.start, this.set);
    this.currentLimit.step(p, 0, 0, this.heat.temperatures.winding);
    this.fillRecord(0, 0, 0);
    this.record[C.encoderPosition] = p.start;
  }

  private fillRecord(time: number, id: number, iq: number): void {
    const { plant, y, record, heat, set } = this;
    const t = heat.temperatures;
    plant.friction.evaluate(y[V2]!, y[Z]!);
    record[C.time] = time;
    record[C.setpoint] = set.position;
    record[C.setSpeed] = set.speed;
    record[C.setAcceleration] = set.acceleration;
    record[C.motorPosition] = y[X1]!;
    record[C.motorSpeed] = y[V1]!;
    record[C.tablePosition] = y[X2]!;
    record[C.tableSpeed] = y[V2]!;
    record[C.followingError] = this.positionLoop.error;
    record[C.currentCommand] = this.positionLoop.currentCommand;
    record[C.forceCurrent] = iq;
    record[C.fieldCurrent] = id;
    record[C.circulatingCurrent] = this.circulatingCurrent(id, iq);
    record[C.currentLimit] = this.currentLimit.amplitude;
    record[C.voltage] = Math.hypot(plant.voltageD, plant.voltageQ);
    record[C.motorForce] = plant.windings.forceAt(y[X1]!, y, this.scratch);
    record[C.coggingForce] = plant.cogging.force(y[X1]!);
    record[C.guideForce] = plant.friction.force;
    record[C.dragForce] = plant.drag(y[V1]!);
    record[C.processForce] = plant.processForce;
    record[C.handForce] = plant.handForce(y[X2]! + plant.basePosition(y), y[V2]! + plant.baseSpeed(y));
    record[C.windingTemperature] = t.winding;
    record[C.carrierTemperature] = t.carrier;
    record[C.tableTemperature] = t.table;
    record[C.screwTemperature] = t.screw;
    record[C.basePosition] = plant.basePosition(y);
    record[C.electricPower] = 1.5 * (plant.voltageD * id + plant.voltageQ * iq);
    record[C.energyResidual] = this.audit.relativeResidual;
  }

  /** Largest deviation of one motor's current vector from the mean of all, A. */
  private circulatingCurrent(id: number, iq: number): number {
    const n = this.plant.motors;
    let largest = 0;
    for (let j = 0; j < n; j++) {
      const k = CURRENTS + 2 * j;
      largest = Math.max(largest, Math.hypot(this.y[k]! - id / n, this.y[k + 1]! - iq / n));
    }
    return largest;
  }

  /** Force per ampere of all motors together at 20 °C, N/A of amplitude. */
  get forcePerAmp(): number {
    return motorConstants(this.p).forcePerAmp;
  }
}
