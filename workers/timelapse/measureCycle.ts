import { motorConstants } from '../../shared/axis/motor.ts';
import { resistanceFactor, sinkConductance } from '../../shared/axis/temperature.ts';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import { TemperatureFoldback } from '../control/currentLimit.ts';
import type { Audit } from '../model/audit.ts';
import { Draught, type Losses } from '../model/heat.ts';
import type { Temperatures } from '../model/state.ts';
import { Axis } from '../run/axis.ts';
import type { Effort } from '../run/effort.ts';
import { Tally } from '../run/tally.ts';
import { tripOf } from '../run/tripOf.ts';
import { batchSolver } from '../solver/engine.ts';
import { type Cycle, type CyclePart, forceFactor } from './cycle.ts';
import type { CycleSpan } from './cycleSpan.ts';
import { SaturationTally } from './saturationTally.ts';

/**
 * A cycle is cut into parts no longer than this share of the shortest thermal time constant, but
 * not into more than this many.
 */
const SHARE_OF_TIME_CONSTANT = 0.02;
const MAX_PARTS = 64;

/**
 * Runs the axis at constant temperatures, lets it settle, and measures the losses of whole cycles.
 * `folded` starts with the overload allowance used up.
 *
 * @returns the measured cycle, or the trip of the drive
 */
export function measureCycle(scene: Scene, span: CycleSpan, at: Temperatures, folded: boolean): Cycle | Trip {
  // With infinite heat capacities the temperatures stay constant.
  const held: Parameters = {
    ...scene.parameters,
    windingCapacity: Infinity,
    carrierCapacity: Infinity,
    tableCapacity: Infinity,
    screwCapacity: Infinity,
  };
  const axis = new Axis(
    { ...scene, parameters: held },
    { temperatures: at, overload: folded ? 1 : 0, solver: batchSolver },
  );
  const run = new MeasuredRun(scene.parameters, span, at, axis);
  while (!run.done) if (!run.sample()) return tripOf(axis);
  return run.cycle(folded);
}

class MeasuredRun {
  readonly #p: Parameters;
  readonly #span: CycleSpan;
  readonly #at: Temperatures;
  readonly #axis: Axis;
  readonly #period: number = 0;
  readonly #perPart: number = 0;
  readonly #draught = new Draught();
  /** With the squares of the actual current. */
  readonly #parts: CyclePart[] = [];
  readonly #force = new Tally();
  readonly #current = new Tally();
  readonly #saturation: SaturationTally;
  #samples = 0;
  #inPart = 0;
  #draughtSum = 0;
  #partStart: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };
  #before = { in: 0, copper: 0 };
  #forceTimesCurrent = 0;
  #currentSquares = 0;
  #use = 0;
  #limit = Infinity;
  #from = Infinity;
  #to = -Infinity;

  constructor(p: Parameters, span: CycleSpan, at: Temperatures, axis: Axis) {
    this.#p = p;
    this.#span = span;
    this.#at = at;
    this.#axis = axis;
    this.#period = p.positionDivider / p.currentRate;
    this.#saturation = new SaturationTally(p.saturationCurrent);
    const ofPart = SHARE_OF_TIME_CONSTANT * quickestTimeConstant(p);
    this.#perPart = Math.max(Math.ceil(span.measure / MAX_PARTS), Math.floor(ofPart / this.#period), 1);
  }

  get done(): boolean {
    return this.#samples === this.#span.settle + this.#span.measure;
  }

  /** One position-loop sample. Returns false once tripped. */
  sample(): boolean {
    const axis = this.#axis;
    const { positionDivider } = this.#p;
    if (this.#samples === this.#span.settle) this.#begin(axis.audit);
    const measuring = this.#samples >= this.#span.settle;
    for (let k = 0; k < positionDivider; k++) {
      if (!axis.step()) return false;
      if (measuring) this.#takeTick(axis.effort);
      if (k === 0) this.#takeSample(axis, measuring);
    }
    this.#samples++;
    if (measuring && (++this.#inPart === this.#perPart || this.done)) this.#closePart(axis.audit);
    return true;
  }

  cycle(folded: boolean): Cycle {
    const p = this.#p;
    const at = this.#at;
    const { audit } = this.#axis;
    const duration = this.#span.measure * this.#period;
    const fluxExponent = this.#saturation.fluxExponent;
    const scale = forceFactor(p, { fluxExponent }, at.carrier);
    const useful = audit.in - this.#before.in - (audit.copper - this.#before.copper);
    return {
      at: { ...at },
      folded,
      duration,
      parts: this.#parts.map((part) => ({ ...part, squares: part.squares * scale ** 2 })),
      usefulPower: useful / duration,
      forcePerAmp:
        this.#currentSquares > 0
          ? this.#forceTimesCurrent / this.#currentSquares / scale
          : motorConstants(p).forcePerAmp,
      fluxExponent,
      rmsForce: this.#force.rms,
      rmsCurrent: this.#current.rms * scale,
      currentUse: this.#use,
      overloaded: this.#limit < p.peakCurrent * new TemperatureFoldback(p).share(at.winding) * (1 - 1e-9),
      from: this.#from,
      to: this.#to,
    };
  }

  /**
   * From here on the axis repeats what it has done so far: the speed that cools it has its periodic
   * value.
   */
  #begin(audit: Audit): void {
    const left = (1 - this.#period) ** this.#span.settle;
    this.#draught.meanSquareSpeed /= 1 - left;
    this.#before = { in: audit.in, copper: audit.copper };
    this.#partStart = lossesOf(audit);
  }

  #takeTick({ force, forceCurrent: iq, current }: Readonly<Effort>): void {
    this.#force.add(force);
    this.#current.add(current);
    this.#forceTimesCurrent += force * iq;
    this.#currentSquares += iq * iq;
    this.#saturation.add(iq / this.#p.motorCount);
  }

  #takeSample({ motion, effort }: Axis, measuring: boolean): void {
    this.#draught.step(valueAt(motion, C.motorSpeed), this.#period);
    if (!measuring) return;
    this.#draughtSum += this.#draught.factor(this.#p.speedCooling);
    this.#use = Math.max(this.#use, Math.abs(effort.currentUse));
    this.#limit = Math.min(this.#limit, valueAt(motion, C.currentLimit));
    this.#from = Math.min(this.#from, valueAt(motion, C.setpoint));
    this.#to = Math.max(this.#to, valueAt(motion, C.setpoint));
  }

  #closePart(audit: Audit): void {
    const partStart = this.#partStart;
    const duration = this.#inPart * this.#period;
    const resistance = motorConstants(this.#p).resistance * resistanceFactor(this.#at.winding);
    const squares = (audit.copper - partStart.copper) / resistance / duration;
    this.#parts.push({
      duration,
      squares,
      iron: (audit.iron - partStart.iron) / duration,
      guide: (audit.guide - partStart.guide) / duration,
      nut: (audit.nut - partStart.nut) / duration,
      draught: this.#draughtSum / this.#inPart,
    });
    this.#partStart = lossesOf(audit);
    this.#inPart = 0;
    this.#draughtSum = 0;
  }
}

function lossesOf({ copper, iron, guide, nut }: Audit): Losses {
  return { copper, iron, guide, nut };
}

/** Capacity over conductance of the fastest node, s. */
function quickestTimeConstant(p: Parameters): number {
  return Math.min(
    p.windingCapacity / p.windingToCarrier,
    p.carrierCapacity / (p.windingToCarrier + sinkConductance(p) + p.carrierToTable),
    p.tableCapacity / (p.carrierToTable + p.tableToAir),
    p.screwCapacity / p.screwToAir,
  );
}
