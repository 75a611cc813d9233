import type { Parameters } from '../../core/parameters/table.ts';

/**
 * The feedback of a position loop, whatever its structure, as weights of its four signals:
 *
 *     F = a e + b ∫e dt + c (v_set − v̂) + d ∫(v_set − v̂) dt
 *
 *     PID:      a = Kp          b = Ki            c = Kd      d = 0
 *     cascade:  a = Kvel Kv     b = Kvel Kv/Tn    c = Kvel    d = Kvel/Tn
 *
 * The filter on the velocity command of a cascade acts on a and b. Source: multiplying out Kvel (1 + 1/(Tn s)) (Kv e + v_set − v̂).
 */
export interface FeedbackWeights {
  /** N/m */
  readonly error: number;
  /** N/(m·s) */
  readonly errorIntegral: number;
  /** N·s/m */
  readonly speed: number;
  /** N/m */
  readonly speedIntegral: number;
}

export type FeedbackGains = Pick<
  Parameters,
  'controller' | 'Kp' | 'Ki' | 'Kd' | 'positionLoopGain' | 'velocityGain' | 'resetTime'
>;

export function feedbackWeights(p: FeedbackGains): FeedbackWeights {
  if (p.controller === 'PID') return { error: p.Kp, errorIntegral: p.Ki, speed: p.Kd, speedIntegral: 0 };
  const { velocityGain: Kvel, positionLoopGain: Kv } = p;
  const resetRate = p.resetTime > 0 ? 1 / p.resetTime : 0;
  return {
    error: Kvel * Kv,
    errorIntegral: Kvel * Kv * resetRate,
    speed: Kvel,
    speedIntegral: Kvel * resetRate,
  };
}
