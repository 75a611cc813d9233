/** The phases a, b, c by the letters of their terminals (IEC 60034-8); coils follow in this order. */
export const PHASES = ['U', 'V', 'W'] as const;

/**
 * Phase currents behind the currents of the controller's frame (inverse Park, amplitude-invariant):
 *
 *     i_a = i_d cos θ − i_q sin θ
 *     i_b = i_d cos(θ − 2π/3) − i_q sin(θ − 2π/3)
 *     i_c = i_d cos(θ + 2π/3) − i_q sin(θ + 2π/3)          θ = π x/τ
 *
 * Source: Krause, Wasynczuk, Sudhoff, Analysis of Electric Machinery and Drive Systems, 2nd ed. 2002, ch. 3, with the d axis at θ.
 */
export function phaseCurrents(
  fieldCurrent: number,
  forceCurrent: number,
  angle: number,
): [a: number, b: number, c: number] {
  return [
    coilCurrent(fieldCurrent, forceCurrent, angle),
    coilCurrent(fieldCurrent, forceCurrent, angle - (2 * Math.PI) / 3),
    coilCurrent(fieldCurrent, forceCurrent, angle + (2 * Math.PI) / 3),
  ];
}

/**
 * Current in the turns of a coil that sits at the electrical angle `angle` from the magnets, winding sense included. Coils
 * one third of a pole pitch apart follow as a, −b, c, −a, b, −c; coils four thirds apart as a, b, c.
 */
export function coilCurrent(fieldCurrent: number, forceCurrent: number, angle: number): number {
  return fieldCurrent * Math.cos(angle) - forceCurrent * Math.sin(angle);
}
