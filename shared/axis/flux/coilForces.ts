import type { Parameters } from '../../core/parameters/table.ts';
import { fitFactor } from '../field.ts';
import { motorConstants, motorOffsets } from '../motor.ts';
import { rippleTerms } from '../periodic.ts';
import { magnetFactor } from '../temperature.ts';

/** What the forces within the motors depend on: currents of all motors, A, motor position, m, and carrier temperature, °C. */
interface MotorState {
  readonly fieldCurrent: number;
  readonly forceCurrent: number;
  readonly position: number;
  readonly carrier: number;
}

/** One coil: its current and its force on the coil unit along +x. */
export interface CoilForce {
  readonly current: number;
  readonly force: number;
}

/*
 * Lorentz force on each of the n coils of motor j, which stand `pitch` apart along the axis:
 *
 *   θ_c = π (x + δ_j + c·pitch)/τ      i_c = i_d cos θ_c − i_q sin θ_c      F_c = −(3/n)(π/τ) ψ_j i_c sin θ_c
 *
 * Over whole groups of three they add up to 1.5 (π/τ) ψ_j (i_q cos(πδ_j/τ) − i_d sin(πδ_j/τ)), which is the motor's force in MODEL.md.
 * The amplifier's current is shared alike among the motors; what circulates between misaligned ones is left out.
 */
export function coilForces(
  p: Parameters,
  motor: number,
  coils: number,
  pitch: number,
  state: MotorState,
): CoilForce[] {
  const perPitch = Math.PI / motorConstants(p).polePitch;
  const [id, iq] = [state.fieldCurrent / p.motorCount, state.forceCurrent / p.motorCount];
  const strength = (3 / coils) * perPitch * fluxLinkage(p, state);
  const offset = motorOffsets(p)[motor] ?? 0;
  return Array.from({ length: coils }, (_, c) => {
    const place = perPitch * (state.position + c * pitch);
    const current = id * Math.cos(place) - iq * Math.sin(place);
    return { current, force: -strength * current * Math.sin(place + perPitch * offset) };
  });
}

/** ψ of one motor in its present state, V·s, as in MODEL.md. */
export function fluxLinkage(p: Parameters, { forceCurrent, position, carrier }: MotorState): number {
  const { flux, polePitch } = motorConstants(p);
  const each = forceCurrent / p.motorCount;
  const saturation = p.saturationCurrent > 0 ? Math.hypot(1, each / p.saturationCurrent) : 1;
  const ripple = rippleTerms(p).reduce(
    (sum, { amplitude, order, phase }) =>
      sum + amplitude * Math.cos((order * Math.PI * position) / polePitch + phase),
    1,
  );
  return (flux * magnetFactor(p, carrier) * fitFactor(p, polePitch) * ripple) / saturation;
}

/** Amplitude of the sheet of current that gives the force of these coils over a face, per ampere, 1/m: K̂ = 2F/(b_1 S). */
export function sheetPerAmp(p: Parameters, state: MotorState, fundamental: number, area: number): number {
  const forcePerAmp = 1.5 * (Math.PI / motorConstants(p).polePitch) * fluxLinkage(p, state);
  return (2 * forcePerAmp) / (fundamental * magnetFactor(p, state.carrier) * area);
}
