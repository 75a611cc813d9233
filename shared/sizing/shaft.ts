/** A round shaft: diameter and free length, m; Young's modulus, Pa; density, kg/m³. */
interface Shaft {
  readonly diameter: number;
  readonly length: number;
  readonly modulus: number;
  readonly density: number;
}

/**
 * First root λ of the frequency equation of a beam, by how its ends are held.
 * Source: R. D. Blevins, Formulas for Natural Frequency and Mode Shape, 1979, table 8-1: tan λ = tanh λ, cos λ cosh λ = 1, and −1.
 */
export const BENDING_ROOT = { fixedSupported: 3.9266, fixedFixed: 4.73, fixedFree: 1.8751 } as const;

/** Length that counts for buckling over the free length: J. M. Gere, Mechanics of Materials, ch. 11: 0.699, 0.5, and 2. */
export const BUCKLING_LENGTH = { fixedSupported: 0.699, fixedFixed: 0.5, fixedFree: 2 } as const;

/** Second moment of area of a round section, I = π d⁴/64, m⁴. */
export function areaMoment(diameter: number): number {
  return (Math.PI * diameter ** 4) / 64;
}

/**
 * Lowest frequency at which a shaft bends and at which, turning, it whips, Hz: f = λ²/(2π l²) √(E I/(ρ A)). For a round section
 * √(I/A) = d/4. Source: Euler-Bernoulli beam.
 */
export function bendingFrequency({ diameter, length, modulus, density }: Shaft, root: number): number {
  return ((root / length) ** 2 / (2 * Math.PI)) * (diameter / 4) * Math.sqrt(modulus / density);
}

/** Euler's critical load, N: P = π² E I/(K l)², K from BUCKLING_LENGTH. */
export function eulerLoad(modulus: number, moment: number, length: number, effective: number): number {
  return (Math.PI ** 2 * modulus * moment) / (effective * length) ** 2;
}

/** Stiffness of a bar along its axis, N/m, from its rigidity E·A, N. */
export function axialStiffness(rigidity: number, length: number): number {
  return rigidity / length;
}

/** Force that keeps a bar at its length through a warming, N: E A α ΔT. Source: J. M. Gere, Mechanics of Materials, ch. 2. */
export function thermalForce(rigidity: number, expansion: number, kelvin: number): number {
  return rigidity * expansion * kelvin;
}

/** Stiffness of a round shaft against twist, N·m: k = G I_p/l, I_p = π d⁴/32. Source: J. M. Gere, Mechanics of Materials, ch. 3. */
export function twistStiffness(shear: number, diameter: number, length: number): number {
  return (shear * 2 * areaMoment(diameter)) / length;
}

/** Growth of a length by heat, m: α l ΔT. */
export function elongation(expansion: number, length: number, kelvin: number): number {
  return expansion * length * kelvin;
}

/** Inertia that a mass has about a screw or drum which moves it `lead` per turn, kg·m²: m (p_h/2π)². */
export function referredInertia(mass: number, lead: number): number {
  return mass * (lead / (2 * Math.PI)) ** 2;
}

/** Torque that gives a thrust through a screw, N·m: T = F p_h/(2π η). */
export function screwTorque(thrust: number, lead: number, efficiency: number): number {
  return (thrust * lead) / (2 * Math.PI * efficiency);
}

/** Sag of a beam under its own weight between two supports, m: f = 5 w l⁴/(384 E I), w in N/m. Source: J. M. Gere, Mechanics of Materials, table G-2. */
export function sag(weight: number, length: number, modulus: number, moment: number): number {
  return (5 * weight * length ** 4) / (384 * modulus * moment);
}

/** Preload of a pair of nuts as a share of their dynamic load rating: 3 to 8 % (common practice, no source). */
export const LIFE_PRELOAD = 0.05;

/**
 * Axial loads of the two halves of a preloaded nut under a thrust F, N: the loaded half has F_p (1 + F/(2√2 F_p))^1.5 until
 * F = 2√2 F_p takes the preload away, the other one that less F. Source: ISO 3408-5:2006, 5.3 (from memory).
 */
export function preloadedPair(
  thrust: number,
  preload: number,
): { readonly loaded: number; readonly other: number } {
  const lift = 2 ** 1.5 * preload;
  if (thrust >= lift) return { loaded: thrust, other: 0 };
  const loaded = preload * (1 + thrust / lift) ** 1.5;
  return { loaded, other: Math.max(loaded - thrust, 0) };
}

/** Revolutions that nine nuts in ten reach, L_10 = 10⁶ (C_a/F_m)³. Source: ISO 3408-5:2006, 5.2. */
export function nutLife(rating: number, meanLoad: number): number {
  return 1e6 * (rating / meanLoad) ** 3;
}

/** Life of two halves together: L = (L_1^(−10/9) + L_2^(−10/9))^(−9/10). Source: ISO 3408-5:2006, 5.3 (from memory). */
export function pairLife(one: number, other: number): number {
  return (one ** (-10 / 9) + other ** (-10 / 9)) ** -0.9;
}
