import { TableGrowth } from '../../shared/axis/growth.ts';
import type { CoggingTable } from '../../shared/core/coggingTable.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { SegmentCommand } from '../../shared/motion/setpoint.ts';
import type { DriveNotice } from '../../shared/protocol/axis.ts';
import type { Temperatures } from '../model/state.ts';
import { CurrentLimit } from './currentLimit.ts';
import { CurrentLoop } from './currentLoop.ts';
import { Encoder } from './encoder.ts';
import { Notices } from './notices.ts';
import { OscillationWatch } from './oscillation.ts';
import { PositionLoop } from './positionLoop.ts';
import type { Sampled } from './sampled.ts';

/**
 * Everything between encoder and voltage: both loops, the limit of the current, and what the drive notices about itself. When each part is
 * run is not its business but that of the timing rule (run/axis.ts).
 */
export class Drive {
  /** Last encoder reading, m. */
  reading = 0;
  /** Hz, while the drive has swung from one limit of current or voltage to the other for too long; else 0. */
  ringing = 0;

  readonly #positionLoop: PositionLoop;
  readonly #currentLoop = new CurrentLoop();
  readonly #currentLimit: CurrentLimit;
  readonly #encoder: Encoder;
  readonly #motorEncoder: Encoder;
  readonly #noticed = new Notices();
  #oscillation = new OscillationWatch();
  #enabled: boolean;
  #dualLoop = false;
  #growth: TableGrowth;
  #samplePeriod = 0;

  /** @param overload share of the overload allowance that is gone at the start */
  constructor(p: Parameters, overload: number | undefined, cogging: CoggingTable | undefined) {
    this.#positionLoop = new PositionLoop(cogging);
    this.reading = p.start;
    this.#enabled = p.drive === 'on';
    this.#currentLimit = new CurrentLimit(p, overload);
    this.#growth = new TableGrowth(p);
    this.#encoder = new Encoder(p.seed);
    this.#motorEncoder = new Encoder(p.seed);
    this.configure(p);
  }

  configure(p: Parameters): void {
    this.#enabled = p.drive === 'on';
    this.#samplePeriod = (1 / p.currentRate) * p.positionDivider;
    this.#growth = new TableGrowth(p);
    this.#encoder.configure(p);
    this.#motorEncoder.configure({
      ...p,
      encoderResolution: p.motorEncoderResolution,
      encoderNoise: 0,
      interpolation1: 0,
      interpolation2: 0,
      longError: 0,
      leadError: 0,
    });
    this.#dualLoop = p.speedSource === 'motor encoder';
    this.#positionLoop.configure(p);
    this.#currentLimit.configure(p);
    this.#currentLoop.configure(p);
  }

  /** Starts the loops afresh, as enabling the drive does. */
  reset(): void {
    this.#positionLoop.reset();
    this.#currentLoop.reset();
    this.#oscillation = new OscillationWatch();
  }

  /** Sets the limit of the current for a winding as warm as it is, with no time passing. */
  begin({ winding }: Temperatures): void {
    this.#currentLimit.step(0, 0, winding);
  }

  /** One position-loop sample: reads the encoder and works out the current command. */
  stepPosition(
    command: Readonly<SegmentCommand>,
    sampled: Readonly<Sampled>,
    t: Readonly<Temperatures>,
  ): void {
    const { time } = sampled;
    this.reading = this.#encoder.read(sampled.position, this.#growth.scaleStrain(t.table));
    const speedReading = this.#dualLoop ? this.#motorEncoder.read(sampled.motorPosition, 0) : this.reading;
    this.#currentLimit.step(this.#samplePeriod, sampled.currentSquared, t.winding);
    this.ringing = 0;
    if (!this.#enabled) {
      this.#positionLoop.observe(command.position, this.reading, speedReading);
      return;
    }
    this.#positionLoop.step(command, this.reading, speedReading, this.#currentLimit.amplitude);
    if (this.#positionLoop.limited) this.#noticed.note('current', time);
    if (this.#currentLimit.overloaded) this.#noticed.note('overload', time);
    if (this.#currentLimit.hot) this.#noticed.note('heat', time);
    if (this.#oscillation.step(time, this.#limitReached)) this.ringing = this.#oscillation.frequency;
  }

  /** One current-loop period: turns command and sampled currents into the next voltage. */
  stepCurrent({ time, id, iq }: Readonly<Sampled>): void {
    if (!this.#enabled) return;
    this.#currentLoop.step(this.#positionLoop.currentCommand, id, iq, this.#positionLoop.speedEstimate);
    if (this.#currentLoop.limited) this.#noticed.note('voltage', time);
  }

  /** Worked out by the last `stepCurrent`, V. */
  get voltageD(): number {
    return this.#currentLoop.voltageD;
  }

  get voltageQ(): number {
    return this.#currentLoop.voltageQ;
  }

  /** Following error at the encoder, m. */
  get error(): number {
    return this.#positionLoop.error;
  }

  /** Current command i_q* and its present limit, A. */
  get currentCommand(): number {
    return this.#positionLoop.currentCommand;
  }

  get currentLimit(): number {
    return this.#currentLimit.amplitude;
  }

  /** Current command as a share of its limit. */
  get currentUse(): number {
    const { amplitude } = this.#currentLimit;
    return amplitude > 0 ? this.#positionLoop.currentCommand / amplitude : 0;
  }

  /** What keeps the drive from following its command at `time`. */
  notices(time: number): DriveNotice[] {
    return this.#noticed.at(time);
  }

  /** Which limit of current or voltage the drive is at: 1, −1, or 0 for none. */
  get #limitReached(): number {
    if (this.#positionLoop.limited) return Math.sign(this.#positionLoop.currentCommand);
    return this.#currentLoop.limited ? Math.sign(this.#currentLoop.voltageQ) : 0;
  }
}
