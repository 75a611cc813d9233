import type { Parameters } from '../core/parameters/table.ts';
import { besselI0 } from './flux/bessel.ts';
import { channelFlux, shaftFlux } from './flux/motorFlux.ts';

/*
 * How the field at the coil follows the fit of the motor: air gap g, nominal gap g0 of the datasheet, eccentricity e.
 *
 *   gap      B/B0 = (h_m + μ_r g0)/(h_m + μ_r g) · atanh(u)/u,  u = μ_r e/(h_m + μ_r g)
 *   cosh     B/B0 = b(g)/b(g0) · cosh(πe/τ)       b: fundamental midway between two rows, flux/magnetRow.ts
 *   bessel   B/B0 = λ(g)/λ(g0) · I0(πe/τ)         λ: flux linkage of a winding around a shaft, flux/magnetShaft.ts
 *
 * gap: one-dimensional load line of a magnet behind an air gap that is wider by e at one edge of the unit and narrower at the other,
 * as a mean over its width; the mean of the square is ((h_m + μ_r g0)/(h_m + μ_r g))²/(1 − u²). cosh and bessel in e are exact for the
 * fundamental: it solves Laplace's equation in the gap, and the mean over the coil follows from the addition theorem (Abramowitz &
 * Stegun, Handbook of Mathematical Functions, 9.6 and 9.1.79). At the nominal gap on centre each factor is exactly 1. The winding is
 * the same at any gap: its turns, resistance and length do not change.
 */

/** Factor on flux: B/B0 for the chosen law, and what this motor deviates from its datasheet by, dimensionless. */
export function fitFactor(p: Parameters, polePitch: number): number {
  return (1 + p.fluxDeviation) * lawFactor(p, polePitch);
}

function lawFactor(p: Parameters, polePitch: number): number {
  // The rotary motor of a screw has its fit within its housing: its datasheet contains it.
  if (p.lead > 0) return 1;
  const offCentre = (Math.PI * p.coilOffset) / polePitch;
  switch (p.fieldLaw) {
    case 'gap': {
      const tilt = gapTilt(p);
      return loadLine(p) * (tilt === 0 ? 1 : Math.atanh(tilt) / tilt);
    }
    case 'cosh':
      return gapFactor(p, (q) => channelFlux(q).linkage) * Math.cosh(offCentre);
    case 'bessel':
      return gapFactor(p, (q) => shaftFlux(q).linkage) * besselI0(offCentre);
    case 'none':
      return 1;
  }
}

/** Mean of (B/B0)² over the iron, the factor on cogging and attraction. Only the gap law changes the field in the iron. */
export function ironFactor(p: Parameters): number {
  if (p.lead > 0 || p.fieldLaw !== 'gap') return 1;
  return loadLine(p) ** 2 / (1 - gapTilt(p) ** 2);
}

function loadLine(p: Parameters): number {
  return (
    (p.magnetHeight + p.recoilPermeability * p.nominalGap) /
    (p.magnetHeight + p.recoilPermeability * p.airGap)
  );
}

/** u of the gap law. A unit that touches the magnets at one edge tilts no further. */
function gapTilt(p: Parameters): number {
  const tilt = Math.min(Math.abs(p.coilOffset), p.airGap);
  return (p.recoilPermeability * tilt) / (p.magnetHeight + p.recoilPermeability * p.airGap);
}

function gapFactor(p: Parameters, linkage: (p: Parameters) => number): number {
  if (p.airGap === p.nominalGap) return 1;
  return linkage(p) / linkage({ ...p, airGap: p.nominalGap });
}
