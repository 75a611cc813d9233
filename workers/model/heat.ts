import type { Parameters } from '../../shared/parameters/table.ts';
import type { Temperatures } from './state.ts';

/** Time over which the speed is averaged for cooling, s. */
const SPEED_MEMORY = 1;

/*
 * Four heat nodes, °C, J/K, W/K:
 *
 *   C_w T_w' = P_cu − G_wh (T_w − T_h)
 *   C_h T_h' = G_wh (T_w − T_h) + P_iron − G_ha h (T_h − T_sink) − G_ht (T_h − T_t)
 *   C_t T_t' = G_ht (T_h − T_t) + ½ P_guide − G_ta (T_t − T_a)
 *   C_s T_s' = P_nut + ½ P_guide − G_sa (T_s − T_a)
 *   h = 1 + c_h √v_rms
 *
 * Stepped with the energies (J) that the plant lost since the last step, so that no heat is lost or counted twice.
 */
export class HeatNetwork {
  readonly temperatures: Temperatures;
  private meanSquareSpeed = 0;

  constructor(p: Parameters) {
    this.temperatures = {
      winding: p.windingStart,
      carrier: p.carrierStart,
      table: p.ambient,
      screw: p.ambient,
    };
  }

  /** One explicit step of dt seconds; heats in J, speed in m/s. */
  step(
    p: Parameters,
    dt: number,
    copper: number,
    iron: number,
    guide: number,
    nut: number,
    speed: number,
  ): void {
    const t = this.temperatures;
    this.meanSquareSpeed += ((speed * speed - this.meanSquareSpeed) * dt) / SPEED_MEMORY;
    const sink = p.cooling ? p.coolantTemperature : p.ambient;
    const h = 1 + p.speedCooling * this.meanSquareSpeed ** 0.25;
    const windingToCarrier = p.windingToCarrier * (t.winding - t.carrier) * dt;
    const carrierToSink = p.carrierToAir * h * (t.carrier - sink) * dt;
    const carrierToTable = p.carrierToTable * (t.carrier - t.table) * dt;
    const tableToAir = p.tableToAir * (t.table - p.ambient) * dt;
    const screwToAir = p.screwToAir * (t.screw - p.ambient) * dt;
    t.winding += (copper - windingToCarrier) / p.windingCapacity;
    t.carrier += (windingToCarrier + iron - carrierToSink - carrierToTable) / p.carrierCapacity;
    t.table += (carrierToTable + 0.5 * guide - tableToAir) / p.tableCapacity;
    t.screw += (nut + 0.5 * guide - screwToAir) / p.screwCapacity;
  }
}
