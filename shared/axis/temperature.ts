import type { Parameters } from '../core/parameters/table.ts';
import { COPPER_ALPHA } from './motor.ts';

/** R(T_w) over its value at 20 °C. */
export function resistanceFactor(winding: number): number {
  return 1 + COPPER_ALPHA * (winding - 20);
}

/** Flux over its value with the magnets at 20 °C: they follow the carrier in part. */
export function magnetFactor(p: Parameters, carrier: number): number {
  return new MagnetWarmth(p).factor(carrier);
}

/** The same for whoever asks at every sample. */
export class MagnetWarmth {
  readonly #ambient: number = 0;
  readonly #follow: number = 0;
  readonly #coefficient: number = 0;

  constructor(p: Parameters) {
    this.#ambient = p.ambient;
    this.#follow = p.magnetFollow;
    this.#coefficient = p.magnetTempCoefficient;
  }

  factor(carrier: number): number {
    const magnet = this.#ambient + this.#follow * (carrier - this.#ambient);
    return 1 + this.#coefficient * (magnet - 20);
  }
}

/**
 * Through what the carrier gives its heat away, W/K: a coolant has a way of its own, air is better at it while the carrier moves.
 * `draught` is 1 at standstill.
 */
export function sinkConductance(p: Parameters, draught = 1): number {
  return p.cooling ? p.carrierToCoolant : p.carrierToAir * draught;
}

/** What the carrier gives its heat to, °C. */
export function sinkTemperature(p: Parameters): number {
  return p.cooling ? p.coolantTemperature : p.ambient;
}
