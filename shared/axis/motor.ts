import type { Parameters } from '../core/parameters/table.ts';

/**
 * One motor as the model uses it: phase values, amplitudes, referred to the table.
 *
 *     R = R_ll/2   L = L_ll/2   K_f,pk = K_f,rms/√2   ψ20 = K_f,pk/(1.5 π/τ)   K_m = K_f,rms/√(3R)
 *
 * Source: power balance of a balanced three-phase machine in amplitude-invariant dq values, e.g. Fitzgerald, Kingsley,
 * Umans, Electric Machinery, 6th ed. 2003, ch. 11. A screw motor counts as a linear motor with K_f = K_t·2π/lead and
 * τ = lead/(2p), its inertia as the mass J·(2π/lead)².
 */
export interface MotorConstants {
  /** Force per ampere rms and per ampere of amplitude at 20 °C, N/A. */
  readonly forcePerAmpRms: number;
  readonly forcePerAmp: number;
  /** Phase resistance at 20 °C, Ω, and phase inductance, H. */
  readonly resistance: number;
  readonly inductance: number;
  /** Pole pitch τ along the table, m. */
  readonly polePitch: number;
  /** Flux linkage ψ20, V·s. */
  readonly flux: number;
  /** Motor constant K_m, N/√W, at 20 °C. */
  readonly motorConstant: number;
  /** Back-EMF line to line, rms, per speed that belongs to the force constant, V·s/m. */
  readonly backEmf: number;
}

/** IEC 60028: resistance of annealed copper rises by 0.00393 per kelvin of its 20 °C value. */
export const COPPER_ALPHA = 0.00393;

export function motorConstants(p: Parameters): MotorConstants {
  const screw = p.lead > 0;
  const forcePerAmpRms = screw ? (p.torqueConstant * 2 * Math.PI) / p.lead : p.forceConstant;
  const forcePerAmp = forcePerAmpRms / Math.SQRT2;
  const polePitch = screw ? p.lead / (2 * p.polePairs) : p.polePitch;
  const resistance = p.resistance / 2;
  return {
    forcePerAmpRms,
    forcePerAmp,
    resistance,
    inductance: p.inductance / 2,
    polePitch,
    flux: forcePerAmp / ((1.5 * Math.PI) / polePitch),
    motorConstant: forcePerAmpRms / Math.sqrt(3 * resistance),
    backEmf: forcePerAmpRms / Math.sqrt(3),
  };
}

/** Of all motors together, as their datasheet states it for one, N. */
export function continuousForce(p: Parameters): number {
  return p.motorCount * p.continuousForce;
}

/** Offsets δ_j of the motors from the electrical angle of the first, which has none, m. */
export function motorOffsets(p: Parameters): number[] {
  return [0, p.misalignment2, p.misalignment3, p.misalignment4].slice(0, p.motorCount);
}

/** Largest voltage amplitude of a phase that the bus gives with space-vector modulation, V_dc/√3, V. */
export function voltageLimit({ busVoltage }: Pick<Parameters, 'busVoltage'>): number {
  return busVoltage / Math.sqrt(3);
}

/** Winding temperature less that of what it gives its heat to, for a steady copper loss (all motors): K/W, standing still. */
export function windingToAmbientResistance(p: Parameters): number {
  const carrierOut =
    (p.cooling ? p.carrierToCoolant : p.carrierToAir) +
    (p.carrierToTable * p.tableToAir) / (p.carrierToTable + p.tableToAir);
  return 1 / p.windingToCarrier + 1 / carrierOut;
}
