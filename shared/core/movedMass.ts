import type { Parameters } from './parameters/table.ts';

/** Mass m1t that travels with the motors: all coil units, kg. */
export function translatingMotorMass(p: Parameters): number {
  return p.motorCount * p.coilMass;
}

/** Mass m1 on the motor side: what travels, and the rotating parts of a screw referred to the table, kg. */
export function motorSideMass(p: Parameters): number {
  const rotating = p.lead > 0 ? p.rotorInertia * ((2 * Math.PI) / p.lead) ** 2 : 0;
  return translatingMotorMass(p) + rotating;
}

/** Mass m2 of table and payload, kg. */
export function loadSideMass(p: Parameters): number {
  return p.tableMass + p.payload;
}

/** Everything that is sped up, M, felt at the table, kg. */
export function movedMass(p: Parameters): number {
  return motorSideMass(p) + loadSideMass(p);
}

/** Numbers of the flexible parts, as in their parameters. */
export const MODE_NUMBERS = [1, 2, 3] as const;

/** Where a flexible part is mounted. */
export type ModeSide = Exclude<Parameters['mode1'], 'off'>;

/** A part of the table, of what it carries or of the motor side, that swings on a spring of its own. SI. */
interface FlexibleMode {
  readonly side: ModeSide;
  /** The share of the moved mass that takes part. */
  readonly mass: number;
  /** Natural frequency with the side held, Hz, and damping ratio. */
  readonly frequency: number;
  readonly damping: number;
}

/** The flexible parts that are switched on, in the order of their numbers. */
export function flexibleModes(p: Parameters): FlexibleMode[] {
  return MODE_NUMBERS.flatMap((n) => {
    const side = p[`mode${n}`];
    if (side === 'off') return [];
    const [mass, frequency, damping] = [p[`mode${n}Mass`], p[`mode${n}Frequency`], p[`mode${n}Damping`]];
    return [{ side, mass, frequency, damping }];
  });
}

/** Mass of the flexible parts on one side, kg: it is contained in the mass of that side. */
export function flexibleMass(p: Parameters, side: ModeSide): number {
  let mass = 0;
  for (const mode of flexibleModes(p)) if (mode.side === side) mass += mode.mass;
  return mass;
}
