import type { ParameterName, Parameters } from '../core/parameters/table.ts';
import type { Unit } from '../core/units.ts';
import { COPPER_ALPHA } from './motor.ts';

/**
 * Another quantity by which a datasheet may state a parameter. It is typed into the field of the parameter with its own unit, or with
 * a word behind it where the unit is the same: '24 N/√W', '0.8 K/W', '90 N stall'.
 */
export interface DatasheetForm {
  readonly unit: Unit;
  /** How its amperes and volts count. */
  readonly form?: 'rms';
  /** What follows the unit, where the unit alone does not tell. */
  readonly word?: 'stall' | 'total';
  /** What its unit is written with, where it is one of the parameter's own unit: V·s/m is N/A. */
  readonly written?: RegExp;
  /** As it is called in a sentence. */
  readonly name: string;
  /** The parameter from the stated value, both SI; not above zero where the two cannot be of one motor. */
  of(stated: number, p: Parameters): number;
  /** What it was worked out with. */
  readonly by: string;
}

const conductance: DatasheetForm = {
  unit: 'K/W',
  name: 'thermal resistance',
  of: (stated) => 1 / stated,
  by: 'conductance is its reciprocal',
};

/** Heat capacity of a node by the time constant with which it cools through all that it gives heat to. */
function timeConstant(of: (p: Parameters) => number): DatasheetForm {
  return {
    unit: 's',
    name: 'thermal time constant',
    of: (stated, p) => stated * of(p),
    by: 'times the conductances from this part, as they are set now',
  };
}

/** Of a steady current, at the winding's limit: watts per square newton. */
function lossPerForce(p: Parameters): number {
  const hot = 1 + COPPER_ALPHA * (p.windingLimit - 20);
  return (1.5 * p.resistance * hot) / p.forceConstant ** 2;
}

/** From the carrier to the room by way of the table. */
const throughTable = (p: Parameters) =>
  p.carrierToTable === 0 ? 0 : 1 / (1 / p.carrierToTable + 1 / p.tableToAir);

/**
 * Sources: K_m = K_f/√(3R), K_e = K_f/√3 as in `motorConstants`; stall: with the motor standing where one phase carries the
 * amplitude, that phase loses twice the mean of a sine, so its force is 1/√2 of the continuous one (common practice, no source).
 */
export const DATASHEET_FORMS: Partial<Record<ParameterName, readonly DatasheetForm[]>> = {
  forceConstant: [
    {
      unit: 'N/√W',
      name: 'motor constant',
      of: (stated, p) => stated * Math.sqrt(1.5 * p.resistance),
      by: 'with the winding resistance as it is set now',
    },
    {
      unit: 'V·s/m',
      form: 'rms',
      written: /V/,
      name: 'back-EMF constant',
      of: (stated) => stated * Math.sqrt(3),
      by: 'times √3, line to line',
    },
  ],
  inductance: [
    {
      unit: 's',
      name: 'electrical time constant',
      of: (stated, p) => stated * p.resistance,
      by: 'times the winding resistance as it is set now',
    },
  ],
  continuousForce: [
    {
      unit: 'N',
      word: 'stall',
      name: 'stall force',
      of: (stated) => stated * Math.SQRT2,
      by: 'times √2: at standstill one phase may carry the amplitude alone',
    },
    {
      unit: 'A',
      form: 'rms',
      name: 'continuous current',
      of: (stated, p) => stated * p.forceConstant,
      by: 'times the force constant as it is set now',
    },
    {
      unit: 'W',
      name: 'continuous copper loss',
      of: (stated, p) => Math.sqrt(stated / lossPerForce(p)),
      by: 'with force constant and resistance as they are set now, the winding at its limit',
    },
    {
      unit: 'K/W',
      name: 'thermal resistance',
      of: (stated, p) => Math.sqrt((p.windingLimit - p.ambient) / stated / lossPerForce(p)),
      by: 'with force constant and resistance as they are set now, from ambient to the winding’s limit',
    },
  ],
  windingToCarrier: [conductance],
  carrierToAir: [
    conductance,
    {
      unit: 'K/W',
      word: 'total',
      name: 'thermal resistance from winding to air',
      of: (stated, p) => 1 / (stated - 1 / p.windingToCarrier) - throughTable(p),
      by: 'less the resistance from winding to carrier and the way through the table',
    },
  ],
  carrierToCoolant: [conductance],
  carrierToTable: [conductance],
  tableToAir: [conductance],
  screwToAir: [conductance],
  windingCapacity: [timeConstant((p) => p.windingToCarrier)],
  carrierCapacity: [timeConstant((p) => p.carrierToAir + throughTable(p))],
  tableCapacity: [timeConstant((p) => p.tableToAir + p.carrierToTable)],
  screwCapacity: [timeConstant((p) => p.screwToAir)],
};
