import { COPPER_ALPHA, motorConstants, windingToAmbientResistance } from '../axis/motor.ts';
import { magnetFactor, resistanceFactor, sinkConductance, sinkTemperature } from '../axis/temperature.ts';
import type { Parameters } from '../core/parameters/table.ts';
import type { MeanPowers } from './demand.ts';

/** Steady state of winding and carrier under a duty; °C, W. */
export interface SteadyHeat {
  readonly winding: number;
  readonly carrier: number;
  readonly copper: number;
  /** Copper loss if the winding were at 20 °C, W. */
  readonly coldCopper: number;
  /** The winding without any copper loss, °C: room or coolant, and what guide and iron add. */
  readonly base: number;
}

const SETTLED = 1e-9;
const MAX_ROUNDS = 200;
/** A winding hotter than this would have melted, °C: there is no end to it. */
const NO_END = 1000;

/**
 * The nodes of the model in balance, standing still (the draught of the motion is left out):
 *
 *     T_w = T_0 + R_th P    P = P_20 (1 + α (T_w − 20))    so  T_w = (T_0 + R_th P_20 (1 − 20 α))/(1 − α R_th P_20)
 *
 * P_20, the copper loss at 20 °C, rises as the magnets warm: the whole is repeated until that has settled too. Null when there is no end.
 * @param meanSquareCurrent of the sum of all motors, A², with the flux of the magnets at this share of that at 20 °C
 */
export function steadyHeat(
  p: Parameters,
  { iron, guide }: Pick<MeanPowers, 'iron' | 'guide'>,
  meanSquareCurrent: (magnet: number) => number,
): SteadyHeat | null {
  const toTable = (p.carrierToTable * p.tableToAir) / (p.carrierToTable + p.tableToAir);
  const sink = sinkConductance(p);
  const out = sink + toTable;
  const fromGuide = (0.5 * guide * p.carrierToTable) / (p.carrierToTable + p.tableToAir);
  const base = (sink * sinkTemperature(p) + toTable * p.ambient + iron + fromGuide) / out;
  const resistance = windingToAmbientResistance(p);
  let carrier = base;
  for (let round = 0; round < MAX_ROUNDS; round++) {
    const square = meanSquareCurrent(magnetFactor(p, carrier));
    const coldCopper = (1.5 * motorConstants(p).resistance * square) / p.motorCount;
    const gain = COPPER_ALPHA * resistance * coldCopper;
    if (!(gain < 1)) return null;
    const winding = (base + resistance * coldCopper * resistanceFactor(0)) / (1 - gain);
    const copper = coldCopper * resistanceFactor(winding);
    const last = carrier;
    carrier = base + copper / out;
    if (winding > NO_END) return null;
    if (Math.abs(carrier - last) < SETTLED) return { winding, carrier, copper, coldCopper, base };
  }
  return null;
}
