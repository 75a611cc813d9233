/**
 * The parallel gains of the position loop read as a cascade: a position loop round a proportional-integral speed loop.
 *
 *     Kd = Kvel    Kp = Kvel (Kv + 1/Tn)    Ki = Kvel Kv/Tn
 *
 * so Kv and 1/Tn are the roots of r² − (Kp/Kd) r + Ki/Kd. They may be swapped without changing the loop; Kv is taken
 * as the larger one, which stays put when the integral gain goes to zero. With complex roots no cascade has these gains.
 * Source: multiplying out (Kv e + ė)·Kvel·(1 + 1/(Tn s)).
 */
export interface Cascade {
  /** Position gain Kv, 1/s. */
  readonly positionGain: number;
  /** Velocity gain Kvel, N·s/m. */
  readonly velocityGain: number;
  /** Reset time Tn of the speed loop, s; Infinity without integral action. */
  readonly resetTime: number;
}

export interface ParallelGains {
  /** N/m */
  readonly Kp: number;
  /** N/(m·s) */
  readonly Ki: number;
  /** N·s/m */
  readonly Kd: number;
}

/** The equivalent cascade, or in plain words why there is none. */
export function cascadeOf({ Kp, Ki, Kd }: ParallelGains): Cascade | string {
  if (Kd === 0) return 'No cascade has these gains: without damping gain there is no speed loop.';
  const sum = Kp / Kd;
  const discriminant = sum * sum - (4 * Ki) / Kd;
  if (discriminant < 0) {
    return 'No cascade has these gains: the integral gain is above K_p²/(4 K_d), so its two corner rates would be complex.';
  }
  const positionGain = (sum + Math.sqrt(discriminant)) / 2;
  // The product of the roots is known; the difference sum − root would lose digits.
  const resetRate = positionGain > 0 ? Ki / Kd / positionGain : 0;
  return { positionGain, velocityGain: Kd, resetTime: 1 / resetRate };
}

export function parallelGainsOf({ positionGain, velocityGain, resetTime }: Cascade): ParallelGains {
  return {
    Kp: velocityGain * (positionGain + 1 / resetTime),
    Ki: (velocityGain * positionGain) / resetTime,
    Kd: velocityGain,
  };
}
