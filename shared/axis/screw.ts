import type { Parameters } from '../core/parameters/table.ts';

/** Steel: Young's and shear modulus, Pa, and density, kg/m³ (handbook values, e.g. Shigley, Mechanical Engineering Design, table A-5). */
export const STEEL_MODULUS = 2.06e11;
export const STEEL_SHEAR_MODULUS = 7.93e10;
export const STEEL_DENSITY = 7850;

/** Root diameter of the screw shaft, m, from its axial rigidity E·A; 0 where none is stated. */
export function screwDiameter({ screwRigidity }: Parameters): number {
  return Math.sqrt((4 * screwRigidity) / (Math.PI * STEEL_MODULUS));
}

/** Root over nominal diameter of a ball screw: 0.82 to 0.88 (common practice, no source). */
const ROOT_SHARE = 0.85;

/** Nominal diameter of the screw, over its threads, m; 0 where none is stated. */
export function nominalDiameter(p: Parameters): number {
  return screwDiameter(p) / ROOT_SHARE;
}

/** Diameter of the plain shaft that is as heavy to turn as the threaded one, m: half way between root and nominal. */
export function inertiaDiameter(p: Parameters): number {
  return (screwDiameter(p) + nominalDiameter(p)) / 2;
}

/** Inertia of a round shaft about its axis, J = π ρ d⁴ l/32, kg·m². */
export function shaftInertia(diameter: number, length: number): number {
  return (Math.PI * STEEL_DENSITY * diameter ** 4 * length) / 32;
}

/** Length of shaft between its bearings, m: the nut stands in the middle at x = 0. */
export function screwLength({ screwSpan }: Parameters): number {
  return 2 * screwSpan;
}

/**
 * Compliance of the shaft with the nut at x, m/N: l/EA from its fixed bearing; between two fixed bearings that are L apart both
 * sides carry in parallel, l (1 − l/L)/EA. 0 where no rigidity is stated. l = x + l₀, L = 2 l₀.
 */
export function shaftCompliance(p: Parameters, position: number): number {
  if (p.screwRigidity === 0) return 0;
  const length = position + p.screwSpan;
  return p.screwSupport === 'fixed'
    ? (length * (1 - length / screwLength(p))) / p.screwRigidity
    : length / p.screwRigidity;
}
