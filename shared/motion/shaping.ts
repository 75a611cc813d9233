import type { Parameters } from '../core/parameters/table.ts';

/** Part of a command: this share of it, this much later (s). */
export interface ShaperImpulse {
  readonly share: number;
  readonly delay: number;
}

export type Shaping = Pick<
  Parameters,
  'jerkRamp' | 'shaper' | 'shaperFrequency' | 'shaperDamping' | 'setpointFilter'
>;

/** How many impulses follow the first. */
const ORDER: Readonly<Record<Shaping['shaper'], number>> = { none: 0, ZV: 1, ZVD: 2, ZVDD: 3 };

/**
 * Impulses of the input shaper, half a period of the damped resonance apart, their shares the terms of
 * ((1 + K q)/(1 + K))ⁿ with K = exp(−π D/√(1 − D²)) and q the delay by half a period. n = 1 leaves no vibration at the
 * frequency itself; each further one makes one more derivative with respect to the frequency zero.
 *
 * Singer, N. C.; Seering, W. P.: Preshaping command inputs to reduce system vibration, ASME J. Dyn. Syst. Meas. Control
 * 112 (1990), 76–82.
 */
export function shaperImpulses({ shaper, shaperFrequency, shaperDamping }: Shaping): ShaperImpulse[] {
  const order = ORDER[shaper];
  if (order === 0) return [{ share: 1, delay: 0 }];
  const root = Math.sqrt(1 - shaperDamping * shaperDamping);
  const half = 1 / (2 * shaperFrequency * root);
  const decay = Math.exp((-Math.PI * shaperDamping) / root);
  const impulses: ShaperImpulse[] = [];
  let share = (1 + decay) ** -order;
  for (let k = 0; k <= order; k++) {
    impulses.push({ share, delay: k * half });
    share *= (decay * (order - k)) / (k + 1);
  }
  return impulses;
}

/** What each stage adds to the time of a move, s. The setpoint filter never quite ends: its time constant stands for it. */
export function shapingTimes(p: Shaping): {
  readonly jerkRamp: number;
  readonly shaper: number;
  readonly setpointFilter: number;
} {
  return {
    jerkRamp: p.jerkRamp,
    shaper: shaperImpulses(p).at(-1)?.delay ?? 0,
    setpointFilter: p.setpointFilter,
  };
}

export function isShaped(p: Shaping): boolean {
  return p.jerkRamp > 0 || p.shaper !== 'none' || p.setpointFilter > 0;
}

/**
 * What is left of the vibration of a resonance (rad/s, damping ratio) that an unshaped step would leave, after the shaper: 0 to 1.
 * Singer and Seering (1990), eq. 5.
 */
export function residualVibration(
  impulses: readonly ShaperImpulse[],
  omega: number,
  damping: number,
): number {
  const last = impulses.at(-1)?.delay ?? 0;
  const damped = omega * Math.sqrt(1 - damping * damping);
  let [cosine, sine] = [0, 0];
  for (const { share, delay } of impulses) {
    const size = share * Math.exp(-damping * omega * (last - delay));
    cosine += size * Math.cos(damped * delay);
    sine += size * Math.sin(damped * delay);
  }
  return Math.hypot(cosine, sine);
}
