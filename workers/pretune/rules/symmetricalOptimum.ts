/** PI control of speed: gain in N·s/m, reset time in s. */
interface SpeedControl {
  readonly gain: number;
  readonly resetTime: number;
}

/**
 * Symmetrical optimum: a mass M behind small delays T under PI control of its speed. The phase is
 * largest, and symmetrical, about the crossover 1/(aT):
 *
 *     gain = M/(aT)    reset time = a² T    phase margin = atan a − atan 1/a
 *
 * a = 2 is Kessler's own choice: 36.9° and 43.4 % overshoot, 8.1 % with a setpoint filter of the
 * reset time. Source: C. Kessler, Das symmetrische Optimum, Regelungstechnik 6, 1958; Umland,
 * Safiuddin, Magnitude and symmetric optimum criterion, IEEE Trans. Industry Applications 26(3),
 * 1990 (from memory).
 */
export function symmetricalOptimum(mass: number, delay: number, a: number): SpeedControl {
  return { gain: mass / (a * delay), resetTime: a * a * delay };
}
