import type { Color, MeshStandardMaterial } from 'three';
import { valueAt } from '../../shared/core/at.ts';
import { CHANNEL_INDEX as C } from '../../shared/core/channels.ts';
import type { Parameters } from '../../shared/core/parameters/table.ts';
import type { Bin } from './build/bin.ts';
import { heatColour, heatShare } from './build/colourScales.ts';
import { phaseCurrents } from './build/electrics.ts';
import { dataMaterial, screenColour } from './build/materials.ts';
import { SteppedRange } from './build/ranging.ts';
import type { Cutaway } from './cutawayMode.ts';
import type { Legend } from './legend.ts';
import { electricalAngle, type Machine } from './machine.ts';

/** Changes below these do not show: share of full scale, K. */
const CURRENT_GRAIN = 0.01;
const HEAT_GRAIN = 0.2;

/** Opens the machine and colours what shows by the currents or the temperatures of the model. */
export class CutawayPaint {
  mode: Cutaway = 'closed';
  readonly #coils: MeshStandardMaterial;
  readonly #carrier: MeshStandardMaterial;
  readonly #table: MeshStandardMaterial;
  readonly #screw: MeshStandardMaterial;
  readonly #range = new SteppedRange({ min: 0.1, max: 5000, calm: 0.6, hold: 2 });
  /** What the colours show now: angle and currents, or temperatures. */
  readonly #shown = new Float64Array(5).fill(Number.NaN);
  readonly #legend: Legend;

  constructor(bin: Bin, legend: Legend) {
    this.#legend = legend;
    [this.#coils, this.#carrier, this.#table, this.#screw] = [1, 2, 3, 4].map(() => dataMaterial(bin)) as [
      MeshStandardMaterial,
      MeshStandardMaterial,
      MeshStandardMaterial,
      MeshStandardMaterial,
    ];
  }

  setMode(mode: Cutaway, machine: Machine | null): void {
    this.mode = mode;
    this.#legend.setMode(mode);
    if (machine) this.dress(machine);
  }

  /** To be called for a new machine too. */
  dress(machine: Machine): void {
    const warm = this.mode === 'temperature';
    machine.setCut(this.mode !== 'closed');
    machine.dress(machine.drive.carriers, warm ? this.#carrier : null);
    machine.dress(machine.table.warm, warm ? this.#table : null);
    machine.dress(machine.drive.screws, warm ? this.#screw : null);
    if (this.mode === 'closed') for (const set of machine.drive.coils) set.setPlain();
    this.#shown.fill(Number.NaN);
  }

  /** Returns whether a colour changed. */
  update(machine: Machine, now: Float64Array, p: Parameters, elapsed: number): boolean {
    if (this.mode === 'closed') return false;
    return this.mode === 'temperature'
      ? this.#showHeat(machine, now, p)
      : this.#showCurrents(machine, now, p, elapsed);
  }

  #showCurrents(machine: Machine, now: Float64Array, p: Parameters, elapsed: number): boolean {
    // The amplifier's current is shared by its motors.
    const field = valueAt(now, C.fieldCurrent) / p.motorCount;
    const force = valueAt(now, C.forceCurrent) / p.motorCount;
    const angle = electricalAngle(p, valueAt(now, C.motorPosition)) % (2 * Math.PI);
    const fullScale = this.#range.follow(Math.hypot(field, force), elapsed);
    this.#legend.showCurrent(fullScale, phaseCurrents(field, force, angle));
    if (!this.#moved([angle, field / fullScale, force / fullScale], CURRENT_GRAIN)) return false;
    for (const set of machine.drive.coils) set.showCurrents(field, force, angle, fullScale, this.#coils);
    return true;
  }

  #showHeat(machine: Machine, now: Float64Array, p: Parameters): boolean {
    this.#legend.showHeat(now, p);
    const nodes = [C.windingTemperature, C.carrierTemperature, C.tableTemperature, C.screwTemperature];
    const temperatures = nodes.map((channel) => valueAt(now, channel));
    if (!this.#moved([...temperatures, p.windingLimit - p.ambient], HEAT_GRAIN)) return false;
    const share = (t: number) => heatShare(t, p.ambient, p.windingLimit);
    const [winding, carrier, table, screw] = temperatures.map(share) as [number, number, number, number];
    for (const set of machine.drive.coils) set.showHeat(winding, this.#coils);
    paint(this.#carrier.color, carrier);
    paint(this.#table.color, table);
    paint(this.#screw.color, screw);
    return true;
  }

  #moved(values: readonly number[], grain: number): boolean {
    if (values.every((value, i) => Math.abs(value - valueAt(this.#shown, i)) < grain)) return false;
    this.#shown.set(values);
    return true;
  }
}

function paint(colour: Color, share: number): void {
  screenColour(colour, heatColour(share));
}
