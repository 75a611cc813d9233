import { TableGrowth } from '../../shared/axis/growth.ts';
import { motorConstants, voltageLimit } from '../../shared/axis/motor.ts';
import { valueAt } from '../../shared/core/at.ts';
import { flexibleModes } from '../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import { signOfLife } from '../../shared/core/signOfLife.ts';
import type { SweptChips } from '../../shared/core/sweptChips.ts';
import { standAt } from '../../shared/motion/setpoint.ts';
import type { Engine, Notice, Trip } from '../../shared/protocol/axis.ts';
import { CommandShaper } from '../command/commandShaper.ts';
import { LearnedForce } from '../command/learnedForce.ts';
import { Program } from '../command/program.ts';
import { newProgramOutput } from '../command/setpoint.ts';
import { Drive } from '../control/drive.ts';
import { Sampled } from '../control/sampled.ts';
import { divergence, Guards } from '../control/trips.ts';
import { Audit } from '../model/audit.ts';
import { HeatNetwork, startTemperatures } from '../model/heat.ts';
import { Plant } from '../model/plant.ts';
import { CURRENTS, type State, type Temperatures, V1, V2, X1, X2 } from '../model/state.ts';
import type { Store } from '../model/term.ts';
import { concernsPlant, ENGINES, type NewSolver, odexSolver, type PlantSolver } from '../solver/engine.ts';
import { DivergedError } from '../solver/tickSolver.ts';
import type { Effort } from './effort.ts';
import { Telemetry } from './telemetry.ts';

/** An axis that has been at work already: as warm as this instead of as its parameters say, with so much of its overload allowance gone. */
export interface AxisStart {
  readonly temperatures?: Temperatures;
  readonly overload?: number;
  /** What integrates the plant: odex by default. */
  readonly solver?: NewSolver;
}

/**
 * One machine axis under its controller: owns the timing rule and nothing else. Pure and deterministic: the same scene and the
 * same calls at the same ticks give bit-identical records.
 *
 * At each t = n·Ts, in this order, because a real drive can do it in no other:
 *
 * 1. the summed currents are sampled;
 * 2. at every n_p-th period: changes are applied, the program advances, its command is shaped, the encoder is read, the position loop gives i_q*;
 * 3. the current loop computes a voltage that will be applied one period later;
 * 4. the plant is integrated to the next edge under the voltage computed one period earlier.
 */
export class Axis {
  /** Current-loop periods done. */
  tick = 0;
  trip: Trip | null = null;
  /** What the program commands, and the same as shaped for the position loop, as of its last sample. */
  readonly command = newProgramOutput();
  readonly set = newProgramOutput();
  readonly audit: Audit;

  readonly #p: Parameters;
  readonly #period: number = 0;
  readonly #program: Program;
  readonly #shaper: CommandShaper;
  readonly #learned: LearnedForce;
  readonly #drive: Drive;
  readonly #guards: Guards;
  readonly #plant: Plant;
  readonly #heat: HeatNetwork;
  #newSolver: NewSolver;
  #solver: PlantSolver;
  /** Now, and as it was a period ago: the two change places. */
  #y: State;
  #before: State;
  readonly #telemetry: Telemetry;
  readonly #effort: Effort = {
    force: 0,
    forceCurrent: 0,
    current: 0,
    voltage: 0,
    currentUse: 0,
    voltageUse: 0,
  };
  #voltageLimit = 0;
  #growth: TableGrowth;
  readonly #positionDivider: number = 0;
  /** Periods until the position loop samples. Counted down: a remainder of numbers that the engine takes for fractions takes as long as all else here. */
  #untilSample = 0;
  readonly #readsTable: boolean;
  readonly #sampled = new Sampled();
  readonly #store: Store = { energy: 0 };

  constructor(scene: Scene, start: AxisStart = {}) {
    const p = { ...scene.parameters };
    this.#p = p;
    this.#period = 1 / p.currentRate;
    this.#positionDivider = p.positionDivider;
    this.#readsTable = p.encoderSide === 'load';
    this.#growth = new TableGrowth(p);
    this.#heat = new HeatNetwork(p, start.temperatures ?? startTemperatures(p));
    this.#drive = new Drive(p, start.overload, scene.coggingTable);
    this.#guards = new Guards(p);
    this.#plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
    this.#plant.configure(p, this.#heat.temperatures);
    this.#voltageLimit = voltageLimit(p);
    this.#newSolver = start.solver ?? odexSolver;
    this.#solver = this.#newSolver(this.#plant, p, this.#period);
    this.#program = new Program(p, scene.moves);
    this.#shaper = new CommandShaper(p);
    this.#learned = new LearnedForce(scene.learnedMove, p);
    this.#y = this.#plant.initialState(p.start);
    this.#before = this.#plant.initialState(p.start);
    this.audit = new Audit(this.#plant.storedEnergy(this.#y));
    this.#telemetry = new Telemetry({
      plant: this.#plant,
      drive: this.#drive,
      set: this.set,
      temperatures: this.#heat.temperatures,
      audit: this.audit,
    });
    // What there is to see before the first tick: the axis at rest where its program starts.
    standAt(p.start, this.command);
    standAt(p.start, this.set);
    this.#drive.begin(this.#heat.temperatures);
    this.#telemetry.takeSample(0);
    this.#telemetry.takePeriod(this.#y, this.#sampled);
  }

  get parameters(): Readonly<Parameters> {
    return this.#p;
  }

  /** Every channel as of the last tick's sampling instant, in the order of CHANNELS, SI. Worked out when it is asked for, so ask anew after each tick. */
  get record(): Float64Array {
    return this.#telemetry.record;
  }

  /** The same record for whoever reads commands, positions, speeds, currents, errors and temperatures alone: what else stands in it may be older. */
  get motion(): Float64Array {
    return this.#telemetry.motion;
  }

  /** What the last tick asked of motor and amplifier. */
  get effort(): Effort {
    const [telemetry, effort] = [this.#telemetry, this.#effort];
    effort.force = telemetry.motorForce;
    effort.forceCurrent = this.forceCurrent;
    effort.current = Math.sqrt(telemetry.iq ** 2 + telemetry.id ** 2);
    effort.voltage = telemetry.voltage;
    effort.currentUse = this.#drive.currentUse;
    effort.voltageUse = effort.voltage / this.#voltageLimit;
    return effort;
  }

  /** Summed over the motors as the last tick sampled them, A. */
  get forceCurrent(): number {
    return this.#telemetry.iq;
  }

  get fieldCurrent(): number {
    return this.#telemetry.id;
  }

  /** Simulated time of the next tick, s. */
  get time(): number {
    return this.tick * this.#period;
  }

  /** True when the next tick samples the position loop: changes may be made now. */
  get atPositionSample(): boolean {
    return this.#untilSample === 0;
  }

  /** What integrates the plant: odex takes over where it is too stiff for the engine that was asked for. */
  get engine(): Engine {
    return this.#solver.engine;
  }

  /** What keeps the drive from following its command, and the run from being true. */
  get notices(): Notice[] {
    const own = this.#drive.notices(this.time);
    return this.audit.holds ? own : [...own, 'audit'];
  }

  /** How far the coil unit has swept the magnets since chips were poured on them; null: none lie there. */
  get chips(): SweptChips | null {
    return this.#plant.terms.chips.swept(this.#y);
  }

  /** Force per ampere of all motors together at 20 °C, N/A of amplitude. */
  get forcePerAmp(): number {
    return motorConstants(this.#p).forcePerAmp;
  }

  /** Takes checked changes. Call at a position-loop sample; parameters that need a restart need a new Axis. */
  change(changes: ParameterChanges): void {
    this.#telemetry.complete();
    const driveBefore = this.#p.drive;
    Object.assign(this.#p, changes);
    this.#voltageLimit = voltageLimit(this.#p);
    if (this.#p.drive !== driveBefore) this.#switchDrive();
    this.#program.setParameters(this.#p);
    this.#shaper.setParameters(this.#p);
    this.#learned.configure(this.#p);
    this.#drive.configure(this.#p);
    this.#guards.configure(this.#p);
    this.#heat.configure(this.#p);
    this.#growth = new TableGrowth(this.#p);
    this.#plant.configure(this.#p, this.#heat.temperatures);
    if (concernsPlant(changes)) this.#solver = this.#newSolver(this.#plant, this.#p, this.#period);
    this.#bookStored();
  }

  /** Integrates with another engine from here on. Call at a position-loop sample. */
  useEngine(engine: Engine): void {
    this.#newSolver = ENGINES[engine];
    this.#solver = this.#newSolver(this.#plant, this.#p, this.#period);
  }

  /** A hand takes hold at a position, m, or lets go with null. Call at a position-loop sample. */
  hand(position: number | null): void {
    this.#telemetry.complete();
    this.#plant.terms.hand.hold(position);
  }

  /** One current-loop period, in the order of the timing rule. Returns false, with nothing done or recorded, once tripped. */
  step(): boolean {
    if (this.trip) return false;
    this.#sample();
    if (this.atPositionSample) this.#stepPositionLoop();
    if (this.trip) return false;
    this.#stepCurrentLoop();
    this.#integrate();
    this.tick++;
    this.#untilSample = (this.#untilSample === 0 ? this.#positionDivider : this.#untilSample) - 1;
    return true;
  }

  #sample(): void {
    const sampled = this.#sampled;
    sampled.time = this.time;
    let id = 0;
    let iq = 0;
    let k = CURRENTS;
    do {
      id += valueAt(this.#y, k++);
      iq += valueAt(this.#y, k++);
    } while (k < CURRENTS + 2 * this.#plant.motors);
    sampled.id = id;
    sampled.iq = iq;
  }

  #stepPositionLoop(): void {
    signOfLife();
    const y = this.#y;
    const t = this.#heat.temperatures;
    const sampled = this.#sampled;
    if (this.tick > 0) this.#stepHeat();
    this.#program.advance(sampled.time, this.command);
    this.#shaper.step(this.command, this.set);
    this.set.force += this.#learned.step(this.command.cycle);
    sampled.position = this.#readsTable ? y[X2] : y[X1];
    sampled.motorPosition = y[X1];
    this.#drive.stepPosition(this.set, sampled, t);
    this.trip = this.#checkGuards();
    if (!this.trip) this.#telemetry.takeSample(this.set.position - (y[X2] + this.#growth.arm(t.table)));
  }

  #checkGuards(): Trip | null {
    const { watched } = this.#guards;
    watched.time = this.#sampled.time;
    watched.error = this.#drive.error;
    watched.position = this.#y[X2];
    watched.speed = this.#y[V2];
    watched.winding = this.#heat.temperatures.winding;
    watched.ringing = this.#drive.ringing;
    watched.pulled = this.#plant.terms.hand.acts;
    return this.#guards.check();
  }

  /** The windings get the voltage of one period ago, before the loop works out the next. */
  #stepCurrentLoop(): void {
    const { windings } = this.#plant.terms;
    windings.voltageD = this.#drive.voltageD;
    windings.voltageQ = this.#drive.voltageQ;
    this.#drive.stepCurrent(this.#sampled);
  }

  /** To the next edge, with the inputs of the plant held. What is recorded is the instant of sampling, before it. */
  #integrate(): void {
    const { process, chips } = this.#plant.terms;
    process.hold(this.#sampled, this.set);
    const before = this.#y;
    const after = this.#before;
    if (chips.acts) chips.hold(before);
    this.#plant.begin(before);
    this.#telemetry.takePeriod(before, this.#sampled);
    try {
      this.#store.energy = this.audit.stored;
      this.#solver.advance(before, after, this.#store);
      this.audit.takeTick(after, this.#store);
      this.#y = after;
      this.#before = before;
    } catch (error) {
      if (!(error instanceof DivergedError)) throw error;
      this.trip = divergence(this.parameters, this.time);
    }
  }

  /** Gives the heat of the time since the last sample to the network, and its temperatures to the plant. */
  #stepHeat(): void {
    const dt = this.#period * this.#positionDivider;
    const changes = this.#heat.step(dt, this.audit.takeHeat(), this.#y[V1]);
    if (changes && this.#plant.warm(this.#heat.temperatures)) this.#bookStored();
  }

  /** Books what new parameters or temperatures did to the stored energy. */
  #bookStored(): void {
    this.audit.bookSet(this.#plant.storedEnergy(this.#y));
  }

  /** Enabling starts the loops afresh from where the table stands; disabling opens or shorts the windings. */
  #switchDrive(): void {
    if (this.#p.drive === 'off') this.#y.fill(0, CURRENTS, CURRENTS + 2 * this.#plant.motors);
    this.#drive.reset();
    if (this.#p.drive !== 'on') return;
    this.#program.resumeFrom(this.#drive.reading, this.time);
    this.#shaper.standAt(this.#drive.reading);
  }
}
