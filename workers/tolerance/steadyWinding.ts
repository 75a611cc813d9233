import { motorConstants } from '../../shared/axis/motor.ts';
import { resistanceFactor } from '../../shared/axis/temperature.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import { Draught, type Losses, startTemperatures } from '../model/heat.ts';
import { type Cycle, forceFactor } from '../timelapse/cycle.ts';
import { SaturationTally } from '../timelapse/saturationTally.ts';
import { steadyWith } from '../timelapse/steady.ts';

/** Mean losses of a cycle, W, and what else decides how warm it makes the winding. */
interface CycleLosses extends Losses {
  /** s */
  readonly duration: number;
  /** m²/s² */
  readonly meanSquareSpeed: number;
  readonly fluxExponent: number;
}

/** Gathers the losses of one cycle. */
export class MeanLosses {
  readonly #saturation: SaturationTally;
  #start: Losses = { copper: 0, iron: 0, guide: 0, nut: 0 };
  #begin = 0;
  #samples = 0;
  #squares = 0;

  constructor({ saturationCurrent, motorCount }: Parameters) {
    this.#saturation = new SaturationTally(saturationCurrent * motorCount);
  }

  /** `losses` so far, J. */
  begin(time: number, { copper, iron, guide, nut }: Readonly<Losses>): void {
    this.#start = { copper, iron, guide, nut };
    this.#begin = time;
  }

  /** Speed of the motor at a position-loop sample, m/s. */
  sample(speed: number): void {
    this.#samples++;
    this.#squares += speed * speed;
  }

  /** Force current of all motors, A. */
  period(forceCurrent: number): void {
    this.#saturation.add(forceCurrent);
  }

  over(time: number, losses: Readonly<Losses>): CycleLosses {
    const duration = time - this.#begin;
    const mean = (name: keyof Losses) => (losses[name] - this.#start[name]) / duration;
    return {
      duration,
      copper: mean('copper'),
      iron: mean('iron'),
      guide: mean('guide'),
      nut: mean('nut'),
      meanSquareSpeed: this.#squares / this.#samples,
      fluxExponent: this.#saturation.fluxExponent,
    };
  }
}

/**
 * Where the winding ends when a cycle is repeated, as the time-lapse finds it, °C: one part with the mean losses, so without
 * the rise and fall within the cycle. Null when losses outgrow the heat flow.
 */
export function steadyWinding(p: Parameters, losses: CycleLosses): number | null {
  const { duration, copper, iron, guide, nut, meanSquareSpeed, fluxExponent } = losses;
  const at = startTemperatures(p);
  const resistance = motorConstants(p).resistance * resistanceFactor(at.winding);
  const squares = (copper / resistance) * forceFactor(p, { fluxExponent }, at.carrier) ** 2;
  const draught = new Draught();
  draught.meanSquareSpeed = meanSquareSpeed;
  const { forcePerAmp } = motorConstants(p);
  const cycle: Cycle = {
    at,
    folded: false,
    duration,
    parts: [{ duration, squares, iron, guide, nut, draught: draught.factor(p.speedCooling) }],
    usefulPower: 0,
    forcePerAmp,
    fluxExponent,
    rmsForce: 0,
    rmsCurrent: 0,
    currentUse: 0,
    overloaded: false,
    from: p.start,
    to: p.start,
  };
  return steadyWith(p, cycle, at, forcePerAmp)?.windingPeak ?? null;
}
