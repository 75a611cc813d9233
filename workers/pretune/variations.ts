import { GUIDE_FRICTION } from '../../shared/axis/guide.ts';
import { type NumberName, within } from '../../shared/axis/loop/tunedValue.ts';
import { magnetFactor } from '../../shared/axis/temperature.ts';
import { MODE_NUMBERS, type ModeSide } from '../../shared/core/movedMass.ts';
import type { ParameterChanges, Parameters } from '../../shared/core/parameters/table.ts';

/** A machine that differs from its datasheet. */
interface Variation {
  readonly name: string;
  /** Changes of the machine; the controller is left alone. */
  readonly changes: (p: Parameters) => ParameterChanges;
}

const FRICTION = [...GUIDE_FRICTION, 'viscous', 'nutDrag', 'nutViscous'] as const;

/**
 * Magnets with the largest temperature coefficient that the table allows, at the temperature of the
 * carrier.
 */
const HOT_MAGNETS = { magnetTempCoefficient: -0.005, magnetFollow: 1 };
/** Temperature of the datasheet, °C. */
const DATASHEET = 20;

export const VARIATIONS: readonly Variation[] = [
  { name: 'Mass +30 %', changes: (p) => mass(p, 1.3) },
  { name: 'Mass −30 %', changes: (p) => mass(p, 0.7) },
  { name: 'Resonance +15 %', changes: (p) => resonance(p, 1.15) },
  { name: 'Resonance −15 %', changes: (p) => resonance(p, 0.85) },
  { name: 'Force constant −15 %, hot', changes: (p) => forceConstant(p, 0.85) },
  { name: 'Friction ×0.5', changes: (p) => scaled(p, FRICTION, 0.5) },
  { name: 'Friction ×2', changes: (p) => scaled(p, FRICTION, 2) },
];

/**
 * Those that a design must withstand already: the others slow the loop down or leave it as it is.
 */
export const DESIGN_VARIATIONS: readonly Variation[] = VARIATIONS.slice(1, 4);

/** Of table and payload, with the share that their flexible parts have in it. */
function mass(p: Parameters, factor: number): ParameterChanges {
  const flexible = flexibleOn(p, 'table').map((n) => `mode${n}Mass` as const);
  return scaled(p, ['tableMass', 'payload', ...flexible], factor);
}

/** Numbers of the flexible parts that are switched on, on one side or on both. */
function flexibleOn(p: Parameters, ...sides: readonly ModeSide[]): readonly (typeof MODE_NUMBERS)[number][] {
  return MODE_NUMBERS.filter((n) => {
    const side = p[`mode${n}`];
    return side !== 'off' && (sides.length === 0 || sides.includes(side));
  });
}

/** Every spring of the drive, of its flexible parts and of the mounts, so that all natural frequencies move together. */
function resonance(p: Parameters, factor: number): ParameterChanges {
  return {
    ...scaled(p, ['linkStiffness', 'screwRigidity'], factor * factor),
    ...scaled(p, ['baseFrequency', ...flexibleOn(p).map((n) => `mode${n}Frequency` as const)], factor),
  };
}

/** Through hot magnets: the controller keeps the constant of the datasheet, as a real one does. */
function forceConstant(p: Parameters, factor: number): ParameterChanges {
  const flux = magnetFactor(p, p.carrierStart);
  return {
    ...HOT_MAGNETS,
    carrierStart: within('carrierStart', DATASHEET + (factor * flux - 1) / HOT_MAGNETS.magnetTempCoefficient),
  };
}

function scaled(p: Parameters, names: readonly NumberName[], factor: number): ParameterChanges {
  return Object.fromEntries(names.map((name) => [name, p[name] === 0 ? 0 : within(name, factor * p[name])]));
}
