import { fitFactor } from '../../../shared/axis/field.ts';
import { motorConstants, motorOffsets } from '../../../shared/axis/motor.ts';
import { magnetFactor, resistanceFactor } from '../../../shared/axis/temperature.ts';
import type { Parameters } from '../../../shared/core/parameters/table.ts';

/**
 * Relative half-width of the force constant that the temperature of the magnets leaves open: it is
 * in no trace, one kelvin is hardly known better, and NdFeB loses 0.11 % of its flux per kelvin
 * (common practice, no source).
 */
export const MAGNET_TOLERANCE = 0.0011;

/**
 * Cosine and sine of each motor's angle in the drive's frame, less their means, and the mean
 * cosine.
 */
function angles(p: Parameters): { readonly aligned: number; readonly spread: number } {
  const { polePitch } = motorConstants(p);
  const offsets = motorOffsets(p);
  const mean = (wave: (angle: number) => number) =>
    offsets.reduce((sum, offset) => sum + wave((Math.PI * offset) / polePitch), 0) / p.motorCount;
  const [cos, sin] = [mean(Math.cos), mean(Math.sin)];
  return { aligned: cos, spread: p.motorCount * (1 - cos * cos - sin * sin) };
}

/**
 * Force per ampere of the magnets as they are at the start of a run over that at 20 °C, all motors
 * together.
 */
export function forceFactor(p: Parameters): number {
  return fluxFactor(p) * angles(p).aligned;
}

function fluxFactor(p: Parameters): number {
  return magnetFactor(p, p.carrierStart) * fitFactor(p, motorConstants(p).polePitch);
}

/*
 * Braking force of motors off one another's angle at a speed v, N: what of their back-EMFs differs
 * drives currents round between them,
 *
 *   F = 1.5 Σ|Δe_j|² R/(R² + ω²L²)/v      Σ|Δe_j|² = ((π/τ) ψ v)² Σ|e^{jπδ_j/τ} − mean|²,  ω = πv/τ
 *
 * from the equations of `windings.ts` at a steady speed.
 */
export function brakingOf(speed: number, p: Parameters): number {
  const motor = motorConstants(p);
  const emfPerSpeed = (fluxFactor(p) * motor.forcePerAmp) / 1.5;
  const resistance = motor.resistance * resistanceFactor(p.windingStart);
  const reactance = (Math.PI * speed * motor.inductance) / motor.polePitch;
  return (
    (1.5 * emfPerSpeed ** 2 * angles(p).spread * resistance * speed) / (resistance ** 2 + reactance ** 2)
  );
}

/**
 * Force of a current record (A of amplitude, all motors together) without ripple, N: as
 * `windings.ts` has it.
 */
export function forceOf(current: Float64Array, p: Parameters): Float64Array<ArrayBuffer> {
  const perAmp = motorConstants(p).forcePerAmp * forceFactor(p);
  const saturation = p.saturationCurrent > 0 ? 1 / (p.motorCount * p.saturationCurrent) ** 2 : 0;
  return Float64Array.from(current, (i) => (perAmp * i) / Math.sqrt(1 + i * i * saturation));
}
