import { sinkConductance, sinkTemperature } from '../../shared/axis/temperature.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Temperatures } from './state.ts';

/** Time over which the speed is averaged for cooling, s. */
const SPEED_MEMORY = 1;

/** What the axis turns into heat, J or W. */
export interface Losses {
  copper: number;
  iron: number;
  guide: number;
  nut: number;
}

/*
 * Four heat nodes, °C, J/K, W/K:
 *
 *   C_w T_w' = P_cu − G_wh (T_w − T_h)
 *   C_h T_h' = G_wh (T_w − T_h) + P_iron − G_sink (T_h − T_sink) − G_ht (T_h − T_t)
 *   C_t T_t' = G_ht (T_h − T_t) + ½ P_guide − G_ta (T_t − T_a)
 *   C_s T_s' = P_nut + ½ P_guide − G_sa (T_s − T_a)
 *   G_sink = G_ha h in air, G_hc with a coolant
 *   h = 1 + c_h √v_rms,   (v_rms²)' = (v² − v_rms²)/1 s
 */

/** Heat that each node takes up in dt seconds at temperatures t, J, written into `into`; `losses` in J, `draught` is h. */
export function heatInto(
  p: Parameters,
  t: Temperatures,
  draught: number,
  losses: Losses,
  dt: number,
  into: Temperatures,
): void {
  const windingToCarrier = p.windingToCarrier * (t.winding - t.carrier) * dt;
  const carrierToSink = sinkConductance(p, draught) * (t.carrier - sinkTemperature(p)) * dt;
  const carrierToTable = p.carrierToTable * (t.carrier - t.table) * dt;
  const tableToAir = p.tableToAir * (t.table - p.ambient) * dt;
  const screwToAir = p.screwToAir * (t.screw - p.ambient) * dt;
  into.winding = losses.copper - windingToCarrier;
  into.carrier = windingToCarrier + losses.iron - carrierToSink - carrierToTable;
  into.table = carrierToTable + 0.5 * losses.guide - tableToAir;
  into.screw = losses.nut + 0.5 * losses.guide - screwToAir;
}

/** How much better the carrier cools because it moves. */
export class Draught {
  /** v_rms², m²/s². */
  meanSquareSpeed = 0;

  step(speed: number, dt: number): void {
    this.meanSquareSpeed += ((speed * speed - this.meanSquareSpeed) * dt) / SPEED_MEMORY;
  }

  /** h, 1 at standstill. */
  factor(p: Parameters): number {
    return 1 + p.speedCooling * Math.sqrt(Math.sqrt(this.meanSquareSpeed));
  }
}

/** The network of a running axis: stepped with the heat (J) that the plant gave off since the last step, so that none is lost or counted twice. */
export class HeatNetwork {
  readonly temperatures: Temperatures;
  readonly #draught = new Draught();
  readonly #into: Temperatures = { winding: 0, carrier: 0, table: 0, screw: 0 };

  constructor(start: Temperatures) {
    this.temperatures = { ...start };
  }

  /** One explicit step of dt seconds; losses in J, speed in m/s. */
  step(p: Parameters, dt: number, losses: Losses, speed: number): void {
    const [draught, into] = [this.#draught, this.#into];
    const { temperatures: t } = this;
    draught.step(speed, dt);
    heatInto(p, t, draught.factor(p), losses, dt, into);
    t.winding += into.winding / p.windingCapacity;
    t.carrier += into.carrier / p.carrierCapacity;
    t.table += into.table / p.tableCapacity;
    t.screw += into.screw / p.screwCapacity;
  }
}

/** Winding and carrier as the parameters set them, table and screw as warm as the room. */
export function startTemperatures(p: Parameters): Temperatures {
  return { winding: p.windingStart, carrier: p.carrierStart, table: p.ambient, screw: p.ambient };
}
