import { at } from '../../core/at.ts';
import type { ParameterName, Parameters } from '../../core/parameters/table.ts';
import { seeded } from '../../core/seeded.ts';
import { type OpenMagnets, openMagnets } from '../flux/motorFlux.ts';
import { heldChip } from './chipForce.ts';

/*
 * Chips on the magnets, and what a coil unit of clearance g does to one of diameter d; r = d/2:
 *
 *   d ≤ g                                      passes beneath, stays where it is
 *   cos θ = (ρ + g − r)/(ρ + r), θ ≤ 2 atan μ  is drawn into the gap and goes with the unit: jammed
 *   else                                       pushed ahead, and left where the unit turns round
 *
 *   pushed   F = μ F_h                         F_h: what holds it, chipForce.ts; only on magnets not swept before
 *   jammed   F = μ (F_h + k_c (d − g))
 *
 * Angle of nip between an edge of radius ρ and a plane: common in crushing and rolling, from memory. Assumptions, no source: μ = 0.3,
 * ρ = 1 mm, k_c = 0.1 N/µm of the potting. Sizes lie in nine classes, places at random where the field is strongest.
 */
const FRICTION = 0.3;
const EDGE = 1e-3;
const CONTACT = 1e5;
const CLASSES = 9;
const SMALLEST = 0.6;
const LARGEST = 1.4;
const SEED = 20;

type Fate = 'passes' | 'jams' | 'pushed';

interface ChipClass {
  readonly diameter: number;
  readonly held: number;
  readonly fate: Fate;
  /** What one of them brakes by when it is met, N. */
  readonly drag: number;
}

export interface Chip {
  /** Where it lies before it is met, m. */
  readonly seat: number;
  readonly of: ChipClass;
  /** Across the magnets, −1 to 1. */
  readonly across: number;
}

export interface ChipBed {
  readonly chips: readonly Chip[];
  readonly magnets: OpenMagnets;
}

const BED = [
  'chipCount',
  'chipSize',
  'cover',
  'travelMin',
  'travelMax',
  'airGap',
  'nominalGap',
  'fieldLaw',
  'lead',
  'coilMass',
  'polePitch',
  'magnetHeight',
  'recoilPermeability',
] as const satisfies readonly ParameterName[];

/** A text that differs whenever the bed would. */
export function bedKey(p: Parameters): string {
  return BED.map((name) => p[name]).join(' ');
}

/** Null where no chip reaches a magnet: none poured, a cover, or no open magnets. */
export function chipBed(p: Parameters): ChipBed | null {
  const magnets = p.chipCount > 0 && !p.cover ? openMagnets(p) : null;
  if (!magnets) return null;
  const { polePitch, unitLength, pole } = magnets;
  const classes = Array.from({ length: CLASSES }, (_, k) => {
    const diameter = p.chipSize * (SMALLEST + ((LARGEST - SMALLEST) * k) / (CLASSES - 1));
    const { force, place } = heldChip(magnets, diameter);
    return { place, ...classOf(diameter, force, magnets.clearance) };
  });
  const random = seeded(SEED);
  const from = p.travelMin - unitLength / 2;
  const width = p.travelMax - p.travelMin + unitLength;
  const chips = Array.from({ length: p.chipCount }, (): Chip => {
    const of = at(classes, Math.floor(CLASSES * random()));
    const side = random() < 0.5 ? -1 : 1;
    const wanted = from + width * random();
    const seat = pole + side * of.place + polePitch * Math.round((wanted - pole) / polePitch);
    return { seat, of, across: 2 * random() - 1 };
  });
  return { chips, magnets };
}

function classOf(diameter: number, held: number, clearance: number): ChipClass {
  const fate = fateOf(diameter, clearance);
  const squeezed = fate === 'jams' ? CONTACT * (diameter - clearance) : 0;
  return { diameter, held, fate, drag: fate === 'passes' ? 0 : FRICTION * (held + squeezed) };
}

/** What becomes of a chip when the unit meets it. */
export function fateOf(diameter: number, clearance: number): Fate {
  if (diameter <= clearance) return 'passes';
  const radius = diameter / 2;
  const angle = Math.acos(Math.min((EDGE + clearance - radius) / (EDGE + radius), 1));
  return angle <= 2 * Math.atan(FRICTION) ? 'jams' : 'pushed';
}

/** Which end of the unit has met a chip: 1, −1, or 0 for none; NaN for one that fell on the unit and lies on no magnet. */
export function metBy(seat: number, unitLength: number, poured: number, from: number, to: number): number {
  const half = unitLength / 2;
  if (Math.abs(seat - poured) < half) return Number.NaN;
  if (seat > poured) return seat <= to + half ? 1 : 0;
  return seat >= from - half ? -1 : 0;
}
