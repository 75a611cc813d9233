import { fluxDensity } from '../flux/harmonics.ts';
import type { OpenMagnets } from '../flux/motorFlux.ts';
import { STEEL_DENSITY } from '../screw.ts';

/*
 * A small sphere of soft iron, diameter d, in the field B of magnets, at the distance d/2 from their face:
 *
 *   M = min(3 B/μ0, M_s)               magnetisation: a sphere of high permeability, until it is saturated
 *   F = V M ∂B/∂y                      on the chip, towards the magnets; unsaturated V (3/2μ0) ∂B²/∂y
 *
 * V = π d³/6. Sources: sphere, Jackson, Classical Electrodynamics, 5.11 (from memory), so χ_eff = 3; force, Rosensweig,
 * Ferrohydrodynamics, 1985 (from memory). μ0 M_s = 2 T: mild steel, handbook value. A long chip has a larger χ_eff than a sphere, and
 * is held harder. Chips do not see each other, nor the iron of the unit.
 */
const MU0 = 4e-7 * Math.PI;
const CHI = 3;
const SATURATION = 2 / MU0;
/** Step of the gradient, as a share of the chip's distance. */
const STEP = 0.01;
/** Places in half a pole pitch at which the strongest is looked for. */
const PLACES = 24;

interface Held {
  /** N, towards the magnets. */
  readonly force: number;
  /** Where the field is strongest, m from the middle of a pole, in half a pole pitch. */
  readonly place: number;
}

export function chipVolume(diameter: number): number {
  return (Math.PI / 6) * diameter ** 3;
}

/** N. */
export function chipWeight(diameter: number): number {
  return 9.80665 * STEEL_DENSITY * chipVolume(diameter);
}

/** How hard, and where along a pole, a chip is held where the field is strongest. */
export function heldChip({ field, polePitch }: OpenMagnets, diameter: number): Held {
  const middle = diameter / 2;
  const strength = (x: number, s: number) => {
    const { across, along } = fluxDensity(field, polePitch, x, s);
    return Math.hypot(across, along);
  };
  let place = 0;
  for (let i = 1; i <= PLACES; i++) {
    const x = (i * polePitch) / (2 * PLACES);
    if (strength(x, middle) > strength(place, middle)) place = x;
  }
  const step = STEP * middle;
  const gradient = (strength(place, middle - step) - strength(place, middle + step)) / (2 * step);
  const magnetisation = Math.min((CHI * strength(place, middle)) / MU0, SATURATION);
  return { force: chipVolume(diameter) * magnetisation * Math.max(gradient, 0), place };
}
