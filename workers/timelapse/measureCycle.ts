import { motorConstants } from '../../shared/axis/motor.ts';
import { resistanceFactor } from '../../shared/axis/temperature.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Scene } from '../../shared/core/scene.ts';
import type { Trip } from '../../shared/protocol/axis.ts';
import { Axis } from '../axis.ts';
import { temperatureFoldback } from '../control/currentLimit.ts';
import type { Audit } from '../model/audit.ts';
import { Draught, type Losses } from '../model/heat.ts';
import type { Temperatures } from '../model/state.ts';
import { currentUse } from '../run/moveMeter.ts';
import { Tally } from '../run/tally.ts';
import { type Cycle, type CyclePart, forceFactor } from './cycle.ts';
import type { CycleSpan } from './cycleSpan.ts';
import { SaturationTally } from './saturationTally.ts';

/** Parts that a cycle is cut into: no longer than this share of the quickest time constant of the heat, but not more than so many. */
const SHARE_OF_TIME_CONSTANT = 0.02;
const MAX_PARTS = 64;

/**
 * Runs the axis at temperatures that are held, lets it settle, and takes the losses of whole cycles. `folded` begins with the overload
 * allowance used up.
 * @returns what was measured, or why the drive tripped
 */
export function measureCycle(scene: Scene, span: CycleSpan, at: Temperatures, folded: boolean): Cycle | Trip {
  // Nothing warms what takes up heat without end.
  const held: Parameters = {
    ...scene.parameters,
    windingCapacity: Infinity,
    carrierCapacity: Infinity,
    tableCapacity: Infinity,
    screwCapacity: Infinity,
  };
  const axis = new Axis({ ...scene, parameters: held }, { temperatures: at, overload: folded ? 1 : 0 });
  const run = new MeasuredRun(scene.parameters, span, at, axis);
  while (!run.done) if (!run.sample()) return axis.trip!;
  return run.cycle(folded);
}

class MeasuredRun {
  private readonly period: number;
  private readonly perPart: number;
  private readonly draught = new Draught();
  /** With the squares of the current as it flowed. */
  private readonly parts: CyclePart[] = [];
  private readonly force = new Tally();
  private readonly current = new Tally();
  private readonly saturation: SaturationTally;
  private samples = 0;
  private inPart = 0;
  private draughtSum = 0;
  private partStart: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };
  private before = { in: 0, copper: 0 };
  private forceTimesCurrent = 0;
  private currentSquares = 0;
  private use = 0;
  private limit = Infinity;
  private from = Infinity;
  private to = -Infinity;

  constructor(
    private readonly p: Parameters,
    private readonly span: CycleSpan,
    private readonly at: Temperatures,
    private readonly axis: Axis,
  ) {
    this.period = p.positionDivider / p.currentRate;
    this.saturation = new SaturationTally(p.saturationCurrent);
    const ofPart = SHARE_OF_TIME_CONSTANT * quickestTimeConstant(p);
    this.perPart = Math.max(Math.ceil(span.measure / MAX_PARTS), Math.floor(ofPart / this.period), 1);
  }

  get done(): boolean {
    return this.samples === this.span.settle + this.span.measure;
  }

  /** One position-loop sample. Returns false once tripped. */
  sample(): boolean {
    const { axis, p } = this;
    if (this.samples === this.span.settle) this.begin(axis.audit);
    const measuring = this.samples >= this.span.settle;
    for (let k = 0; k < p.positionDivider; k++) {
      if (!axis.step()) return false;
      if (measuring) this.takeTick(axis.record);
      if (k === 0) this.takeSample(axis.record, measuring);
    }
    this.samples++;
    if (measuring && (++this.inPart === this.perPart || this.done)) this.closePart(axis.audit);
    return true;
  }

  cycle(folded: boolean): Cycle {
    const { axis, p, at, limit } = this;
    const duration = this.span.measure * this.period;
    const fluxExponent = this.saturation.fluxExponent;
    const scale = forceFactor(p, { fluxExponent }, at.carrier);
    const useful = axis.audit.in - this.before.in - (axis.audit.copper - this.before.copper);
    return {
      at: { ...at },
      folded,
      duration,
      parts: this.parts.map((part) => ({ ...part, squares: part.squares * scale ** 2 })),
      usefulPower: useful / duration,
      forcePerAmp:
        this.currentSquares > 0
          ? this.forceTimesCurrent / this.currentSquares / scale
          : motorConstants(p).forcePerAmp,
      fluxExponent,
      rmsForce: this.force.rms,
      rmsCurrent: this.current.rms * scale,
      currentUse: this.use,
      overloaded: limit < p.peakCurrent * temperatureFoldback(p, at.winding) * (1 - 1e-9),
      from: this.from,
      to: this.to,
    };
  }

  /** From here on the axis does over and over what it did so far: the speed that cools it has its periodic value. */
  private begin(audit: Audit): void {
    const left = (1 - this.period) ** this.span.settle;
    this.draught.meanSquareSpeed /= 1 - left;
    this.before = { in: audit.in, copper: audit.copper };
    this.partStart = lossesOf(audit);
  }

  private takeTick(record: Float64Array): void {
    const force = record[C.motorForce]!;
    const iq = record[C.forceCurrent]!;
    this.force.add(force);
    this.current.add(Math.hypot(iq, record[C.fieldCurrent]!));
    this.forceTimesCurrent += force * iq;
    this.currentSquares += iq * iq;
    this.saturation.add(iq / this.p.motorCount);
  }

  private takeSample(record: Float64Array, measuring: boolean): void {
    this.draught.step(record[C.motorSpeed]!, this.period);
    if (!measuring) return;
    this.draughtSum += this.draught.factor(this.p);
    this.use = Math.max(this.use, Math.abs(currentUse(record)));
    this.limit = Math.min(this.limit, record[C.currentLimit]!);
    this.from = Math.min(this.from, record[C.setpoint]!);
    this.to = Math.max(this.to, record[C.setpoint]!);
  }

  private closePart(audit: Audit): void {
    const { p, at, partStart } = this;
    const duration = this.inPart * this.period;
    const resistance = motorConstants(p).resistance * resistanceFactor(at.winding);
    const squares = (audit.copper - partStart.copper) / resistance / duration;
    this.parts.push({
      duration,
      squares,
      iron: (audit.iron - partStart.iron) / duration,
      guide: (audit.guide - partStart.guide) / duration,
      nut: (audit.nut - partStart.nut) / duration,
      draught: this.draughtSum / this.inPart,
    });
    this.partStart = lossesOf(audit);
    this.inPart = 0;
    this.draughtSum = 0;
  }
}

function lossesOf({ copper, iron, guide, nut }: Audit): Losses {
  return { copper, iron, guide, nut };
}

/** Capacity over conductance of the node that follows quickest, s. */
function quickestTimeConstant(p: Parameters): number {
  return Math.min(
    p.windingCapacity / p.windingToCarrier,
    p.carrierCapacity / (p.windingToCarrier + p.carrierToAir + p.carrierToTable),
    p.tableCapacity / (p.carrierToTable + p.tableToAir),
    p.screwCapacity / p.screwToAir,
  );
}
