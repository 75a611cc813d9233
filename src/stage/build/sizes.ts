import { ALUMINIUM, type Size } from '../../../shared/axis/motorSize.ts';
import { STEEL_DENSITY } from '../../../shared/axis/screw.ts';

/**
 * Sizes of the machine around its motor that the parameters imply: masses at the density of their material. What no parameter states
 * (wall thicknesses, clearances) follows common practice in proportion, no source. SI.
 */

export const GRANITE = 2900;

/** A block of this mass, in the given proportions of length : height : width. */
function blockOfMass(mass: number, density: number, [l, h, w]: readonly [number, number, number]): Size {
  const scale = Math.cbrt(mass / density / (l * h * w));
  return { length: l * scale, height: h * scale, width: w * scale };
}

/** The mould carrier: a flat block of steel with exactly the mass of the payload; null without payload. */
export function payloadSize(payload: number): Size | null {
  return payload > 0 ? blockOfMass(payload, STEEL_DENSITY, [2, 0.32, 1.35]) : null;
}

/** The table plate holds this share of the table's mass; the rest is carriages, brackets and screws. */
const PLATE_SHARE = 0.7;

/** The table plate in aluminium, at least as long and wide as what it has to cover. */
export function plateSize(tableMass: number, minLength: number, minWidth: number): Size {
  const free = blockOfMass(PLATE_SHARE * tableMass, ALUMINIUM, [1.9, 0.32, 1.55]);
  const length = Math.max(free.length, minLength);
  const width = Math.max(free.width, minWidth);
  const height = (PLATE_SHARE * tableMass) / ALUMINIUM / (length * width);
  return { length, width, height: Math.max(height, 0.006) };
}

/** Width of a profiled rail that suits the moved mass: 15 mm at about 12 kg, 45 mm at a third of a ton. */
export function railWidth(movedMass: number): number {
  return Math.min(Math.max(0.0065 * Math.cbrt(movedMass), 0.007), 0.055);
}
