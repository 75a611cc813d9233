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

/** Conductances (W/K), heat capacities (J/K) and surroundings (°C) of the network. */
export class HeatPaths {
  readonly #windingToCarrier: number = 0;
  readonly #carrierToTable: number = 0;
  readonly #tableToAir: number = 0;
  readonly #screwToAir: number = 0;
  /** G_sink without a draught, and what h adds. */
  readonly #sink: number = 0;
  readonly #sinkPerDraught: number = 0;
  readonly #sinkTemperature: number = 0;
  readonly #ambient: number = 0;
  readonly capacity: Readonly<Temperatures>;
  /** All capacities are infinite: temperatures stay as they are. */
  readonly isHeld: boolean;
  /** c_h */
  readonly speedCooling: number = 0;

  constructor(p: Parameters) {
    this.#windingToCarrier = p.windingToCarrier;
    this.#carrierToTable = p.carrierToTable;
    this.#tableToAir = p.tableToAir;
    this.#screwToAir = p.screwToAir;
    this.#sink = sinkConductance(p, 0);
    this.#sinkPerDraught = sinkConductance(p, 1) - this.#sink;
    this.#sinkTemperature = sinkTemperature(p);
    this.#ambient = p.ambient;
    this.capacity = {
      winding: p.windingCapacity,
      carrier: p.carrierCapacity,
      table: p.tableCapacity,
      screw: p.screwCapacity,
    };
    this.isHeld = Object.values(this.capacity).every((capacity) => capacity === Infinity);
    this.speedCooling = p.speedCooling;
  }

  /** Heat that each node takes up in dt seconds at temperatures t, J, written into `into`; `losses` in J, `draught` is h. */
  heatInto(t: Temperatures, draught: number, losses: Losses, dt: number, into: Temperatures): void {
    const windingToCarrier = this.#windingToCarrier * (t.winding - t.carrier) * dt;
    const sink = this.#sink + this.#sinkPerDraught * draught;
    const carrierToSink = sink * (t.carrier - this.#sinkTemperature) * dt;
    const carrierToTable = this.#carrierToTable * (t.carrier - t.table) * dt;
    const tableToAir = this.#tableToAir * (t.table - this.#ambient) * dt;
    const screwToAir = this.#screwToAir * (t.screw - this.#ambient) * dt;
    into.winding = losses.copper - windingToCarrier;
    into.carrier = windingToCarrier + losses.iron - carrierToSink - carrierToTable;
    into.table = carrierToTable + 0.5 * losses.guide - tableToAir;
    into.screw = losses.nut + 0.5 * losses.guide - screwToAir;
  }
}

/** How much better the carrier cools because it moves. */
export class Draught {
  /** v_rms², m²/s². */
  meanSquareSpeed = 0;

  step(speed: number, dt: number): void {
    this.meanSquareSpeed += ((speed * speed - this.meanSquareSpeed) * dt) / SPEED_MEMORY;
  }

  /** h, 1 at standstill, for c_h. */
  factor(speedCooling: number): number {
    return 1 + speedCooling * Math.sqrt(Math.sqrt(this.meanSquareSpeed));
  }
}

/** The network of a running axis: stepped with the heat (J) that the plant gave off since the last step, so that none is lost or counted twice. */
export class HeatNetwork {
  readonly temperatures: Temperatures;
  readonly #draught = new Draught();
  readonly #into: Temperatures = { winding: 0, carrier: 0, table: 0, screw: 0 };
  #paths: HeatPaths;

  constructor(p: Parameters, start: Temperatures) {
    this.temperatures = { ...start };
    this.#paths = new HeatPaths(p);
  }

  configure(p: Parameters): void {
    this.#paths = new HeatPaths(p);
  }

  /**
   * One explicit step of dt seconds; losses in J, speed in m/s.
   * @returns whether temperatures can have changed
   */
  step(dt: number, losses: Losses, speed: number): boolean {
    const draught = this.#draught;
    const into = this.#into;
    const t = this.temperatures;
    const { capacity, speedCooling, isHeld } = this.#paths;
    draught.step(speed, dt);
    if (isHeld) return false;
    this.#paths.heatInto(t, draught.factor(speedCooling), losses, dt, into);
    t.winding += into.winding / capacity.winding;
    t.carrier += into.carrier / capacity.carrier;
    t.table += into.table / capacity.table;
    t.screw += into.screw / capacity.screw;
    return true;
  }
}

/** Winding and carrier as the parameters set them, table and screw as warm as the room. */
export function startTemperatures(p: Parameters): Temperatures {
  return { winding: p.windingStart, carrier: p.carrierStart, table: p.ambient, screw: p.ambient };
}
