import { fitFactor } from '../axis/field.ts';
import { type MotorConstants, motorConstants, voltageLimit } from '../axis/motor.ts';
import type { Parameters } from '../core/parameters/table.ts';

/** The motors as a pencil sees them: all alike, in step, without ripple, in balance at each instant. */
export interface Electrics {
  readonly motor: MotorConstants;
  readonly count: number;
  /** Force per ampere of amplitude of one motor at 20 °C in its present fit, N/A. */
  readonly forcePerAmp: number;
  /** Current amplitude of one motor at which the flux has fallen to 71 %, A; Infinity without saturation. */
  readonly saturation: number;
  /** Largest voltage amplitude of a phase, V_dc/√3. */
  readonly voltageLimit: number;
  readonly perPitch: number;
}

export function electricsOf(p: Parameters): Electrics {
  const motor = motorConstants(p);
  return {
    motor,
    count: p.motorCount,
    forcePerAmp: motor.forcePerAmp * fitFactor(p, motor.polePitch),
    saturation: p.saturationCurrent > 0 ? p.saturationCurrent : Infinity,
    voltageLimit: voltageLimit(p),
    perPitch: Math.PI / motor.polePitch,
  };
}

/**
 * Amplitude of the current of all motors that gives a force, A, signed as the force:
 *
 *     i/N = f/√(1 − (f/i_sat)²),  f = F/(N K_f m)        the inverse of  F = N K_f m i/√(1 + (i/i_sat)²)
 *
 * m: flux of the magnets over that at 20 °C. Infinity where saturation does not let them give so much.
 */
export function currentFor(e: Electrics, force: number, magnet: number): number {
  const linear = force / (e.count * e.forcePerAmp * magnet);
  const rest = 1 - (linear / e.saturation) ** 2;
  return rest > 0 ? (e.count * linear) / Math.sqrt(rest) : Math.sign(force) * Infinity;
}

/** Force of all motors at a current amplitude of all, N. */
export function forceAt(e: Electrics, current: number, magnet: number): number {
  const each = current / e.count;
  return (e.count * e.forcePerAmp * magnet * each) / Math.sqrt(1 + (each / e.saturation) ** 2);
}

/** Voltages of a phase, amplitudes in V: u_d = −ωL i, u_q = R i + e, their sum, and the back-EMF e in it. */
export interface Voltages {
  readonly d: number;
  readonly q: number;
  readonly total: number;
  readonly backEmf: number;
}

/**
 * In balance at a speed (m/s) with a current of one motor (A) through a phase resistance (Ω), i_d = 0:
 *
 *     u_d = −ωL i    u_q = R i + e    e = (2/3) K_f m v/√(1 + (i/i_sat)²)    ω = π v/τ
 */
export function voltagesAt(
  e: Electrics,
  each: number,
  speed: number,
  resistance: number,
  magnet: number,
): Voltages {
  if (!Number.isFinite(each)) return { d: -Infinity, q: Infinity, total: Infinity, backEmf: 0 };
  const backEmf = ((2 / 3) * e.forcePerAmp * magnet * speed) / Math.sqrt(1 + (each / e.saturation) ** 2);
  const d = -e.perPitch * speed * e.motor.inductance * each;
  const q = resistance * each + backEmf;
  return { d, q, total: Math.hypot(d, q), backEmf };
}

/**
 * Largest current of one motor, A, that the bus can drive at a speed while the motor drives; the voltage circle with i_d = 0:
 *
 *     (ωL i)² + (R i + e)² = U²      0 where e reaches U
 *
 * The back-EMF is taken without saturation, which would lower it.
 */
export function currentAtVoltage(e: Electrics, speed: number, resistance: number, magnet: number): number {
  const { backEmf } = voltagesAt(e, 0, speed, resistance, magnet);
  const U = e.voltageLimit;
  if (backEmf >= U) return 0;
  const impedance = (e.perPitch * speed * e.motor.inductance) ** 2 + resistance ** 2;
  const half = resistance * backEmf;
  return (Math.sqrt(half ** 2 + impedance * (U ** 2 - backEmf ** 2)) - half) / impedance;
}
