import type { Parameters } from '../../core/parameters/table.ts';
import type { DriveType } from '../../core/scene.ts';
import { channelSize, flatSize, tubularSize } from '../motorSize.ts';
import { besselI1, besselK1 } from './bessel.ts';
import type { HarmonicsAt } from './harmonics.ts';
import { rowField } from './magnetRow.ts';
import { shaftField } from './magnetShaft.ts';

/** Sintered neodymium-iron-boron at 20 °C, T (common practice, no source). Force and current do not depend on it. */
const REMANENCE = 1.25;
/** Share of the pole pitch that is magnet in a shaft; pole pieces take the rest (common practice, no source). */
const SHAFT_SHARE = 0.8;
const MU0 = 4e-7 * Math.PI;

/** The field within one motor, in a section along the axis. SI; y counts from back iron, from midway between the rows, or from the axis. */
export interface MotorFlux {
  readonly polePitch: number;
  /** Share of the pole pitch that is magnet. */
  readonly share: number;
  /** Of the magnets at 20 °C. */
  readonly magnets: HarmonicsAt;
  /** From the middle of a north pole back to where the electrical angle is zero: coils of a row lie around a pole, rings between poles. */
  readonly shift: number;
  /** The winding lies between these; its current is taken as a sheet at `middle`, or in the face of the iron. */
  readonly winding: { readonly from: number; readonly to: number; readonly middle: number };
  /** Fundamental at the sheet, T, and what the gap changes in proportion: flux that a turn links, T or T·m. */
  readonly fundamental: number;
  readonly linkage: number;
  /** Face of the sheet over the whole unit, m². */
  readonly area: number;
  /** Potential at y for a sheet of 1 A/m amplitude, T·m or T·m². */
  sheetPotential(y: number): number;
}

/** An iron-core unit over a row of magnets: the current flows in the smooth face of its iron. */
function flatFlux(p: Parameters): MotorFlux {
  const { magnet, gap, length, unitHeight } = flatSize(p);
  const share = magnet.length / p.polePitch;
  const k = Math.PI / p.polePitch;
  const face = magnet.height + gap;
  const magnets = rowField({
    polePitch: p.polePitch,
    remanence: REMANENCE,
    permeability: p.recoilPermeability,
    height: magnet.height,
    share,
    gap,
  });
  const fundamental = magnets(1, face).across;
  return {
    polePitch: p.polePitch,
    share,
    magnets,
    shift: 0,
    winding: { from: face, to: face + 0.6 * unitHeight, middle: face },
    fundamental,
    linkage: fundamental,
    area: length * magnet.width,
    // ∂A/∂y is 0 at the back iron and μ0 K at the face: Ampère's law on infinitely permeable iron.
    sheetPotential: (y) => ((MU0 / k) * Math.cosh(k * Math.min(y, face))) / Math.sinh(k * face),
  };
}

/** A blade between two rows. Midway the field crosses at right angles, as if iron stood there. */
export function channelFlux(p: Parameters): MotorFlux {
  const { magnet, gap, bladeWidth, length } = channelSize(p);
  const share = magnet.length / p.polePitch;
  const k = Math.PI / p.polePitch;
  const half = bladeWidth / 2;
  const wall = magnet.width + gap + half;
  const row = rowField({
    polePitch: p.polePitch,
    remanence: REMANENCE,
    permeability: p.recoilPermeability,
    height: magnet.width,
    share,
    gap: gap + half,
  });
  const magnets: HarmonicsAt = (order, y) => {
    const { across, along, potential } = row(order, wall - Math.abs(y));
    return { across, along: y > 0 ? -along : along, potential };
  };
  const fundamental = magnets(1, 0).across;
  return {
    polePitch: p.polePitch,
    share,
    magnets,
    shift: 0,
    winding: { from: -half, to: half, middle: 0 },
    fundamental,
    linkage: fundamental,
    area: length * magnet.height,
    sheetPotential: (y) => ((MU0 / (2 * k)) * Math.cosh(k * (wall - Math.abs(y)))) / Math.sinh(k * wall),
  };
}

/** Rings around a shaft, in free space. */
export function shaftFlux(p: Parameters): MotorFlux {
  const { shaftRadius, coilInner, coilOuter, length } = tubularSize(p);
  const k = Math.PI / p.polePitch;
  const middle = (coilInner + coilOuter) / 2;
  const magnets = shaftField({
    polePitch: p.polePitch,
    remanence: REMANENCE,
    radius: shaftRadius,
    share: SHAFT_SHARE,
  });
  return {
    polePitch: p.polePitch,
    share: SHAFT_SHARE,
    magnets,
    shift: p.polePitch / 2,
    winding: { from: coilInner, to: coilOuter, middle },
    fundamental: magnets(1, middle).across,
    linkage: meanOver(coilInner, coilOuter, (r) => r * magnets(1, r).across),
    area: length * 2 * Math.PI * middle,
    sheetPotential: (r) =>
      MU0 *
      middle *
      r *
      (r < middle ? besselI1(k * r) * besselK1(k * middle) : besselI1(k * middle) * besselK1(k * r)),
  };
}

/** Simpson's rule in four intervals. */
function meanOver(from: number, to: number, f: (x: number) => number): number {
  const at = (i: number) => f(from + ((to - from) * i) / 4);
  return (at(0) + 4 * at(1) + 2 * at(2) + 4 * at(3) + at(4)) / 12;
}

/** The field within one motor of this form; none is computed for the rotary motor of a screw. */
export function motorFlux(driveType: DriveType, p: Parameters): MotorFlux | null {
  switch (driveType) {
    case 'flat':
      return flatFlux(p);
    case 'u-channel':
      return channelFlux(p);
    case 'tubular':
      return shaftFlux(p);
    case 'screw':
      return null;
  }
}

/** Magnets as they lie open to chips beside the coil unit. */
export interface OpenMagnets {
  readonly polePitch: number;
  /** A harmonic at a distance from the face of the magnets, m, and from the middle of a north pole. */
  readonly field: HarmonicsAt;
  /** Between magnets and coil unit, m. */
  readonly clearance: number;
  /** Of the coil unit along the axis, m. */
  readonly unitLength: number;
  /** Middle of a north pole when the unit stands at 0, m. */
  readonly pole: number;
}

/** The open magnets of the motor that the field law of the parameters describes; null: there are none, or none are computed. */
export function openMagnets(p: Parameters): OpenMagnets | null {
  if (p.lead > 0) return null;
  const { polePitch } = p;
  const first = (length: number, coilPitch: number) => (coilPitch - length) / 2;
  switch (p.fieldLaw) {
    case 'gap': {
      const { magnet, gap, length, coilPitch } = flatSize(p);
      const { height } = magnet;
      const row = rowField({
        polePitch,
        remanence: REMANENCE,
        permeability: p.recoilPermeability,
        height,
        share: magnet.length / polePitch,
        gap: Number.POSITIVE_INFINITY,
      });
      const field: HarmonicsAt = (order, s) => row(order, height + s);
      return { polePitch, field, clearance: gap, unitLength: length, pole: first(length, coilPitch) };
    }
    case 'cosh': {
      const { gap, bladeWidth, length, coilPitch } = channelSize(p);
      const { magnets } = channelFlux(p);
      const field: HarmonicsAt = (order, s) => magnets(order, gap + bladeWidth / 2 - s);
      return { polePitch, field, clearance: gap, unitLength: length, pole: first(length, coilPitch) };
    }
    case 'bessel': {
      const { shaftRadius, gap, length, coilPitch } = tubularSize(p);
      const { magnets, shift } = shaftFlux(p);
      const field: HarmonicsAt = (order, s) => magnets(order, shaftRadius + s);
      return { polePitch, field, clearance: gap, unitLength: length, pole: first(length, coilPitch) + shift };
    }
    case 'none':
      return null;
  }
}
