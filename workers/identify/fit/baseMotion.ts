import type { Parameters } from '../../../shared/core/parameters/table.ts';

/** Motion of a base on mounts while the table moves on it. */
interface BaseMotion {
  /** Position of a base that stood still at the first sample, m. */
  readonly position: Float64Array;
  /** Free oscillations that may remain from before, of amplitude 1. */
  readonly swings: readonly Float64Array[];
}

/*
 * The base takes the reaction of all forces that move the travelling mass m over it, so
 *
 *   (m_b + m) x_b'' + c_b x_b' + k_b x_b = −m x''
 *   x_b = −μ s²/(s² + 2Dωs + ω²) x,   μ = m/(m_b + m),  ω² = k_b/(m_b + m),  2Dω = c_b/(m_b + m)
 *
 * with x relative to the base, as the encoder reads it. The filter is discretised by the bilinear
 * transform (Franklin, Powell, Workman, Digital Control of Dynamic Systems, 6.1), which is accurate
 * far beyond the few hertz of mounts.
 */
export function baseMotion(position: Float64Array, period: number, mass: number, p: Parameters): BaseMotion {
  const share = mass / (p.baseMass + mass);
  const own = 2 * Math.PI * p.baseFrequency;
  const omega = own * Math.sqrt(p.baseMass / (p.baseMass + mass));
  const decay = (p.baseDamping * own * p.baseMass) / (p.baseMass + mass);

  const c = 2 / period;
  const a0 = c * c + 2 * decay * c + omega * omega;
  const a1 = 2 * (omega * omega - c * c);
  const a2 = c * c - 2 * decay * c + omega * omega;
  const base = new Float64Array(position.length);
  let [x1, x2, y1, y2] = [0, 0, 0, 0];
  const start = position[0] ?? 0;
  for (const [k, place] of position.entries()) {
    const x = -share * (place - start);
    const y = (c * c * (x - 2 * x1 + x2) - a1 * y1 - a2 * y2) / a0;
    [x2, x1, y2, y1] = [x1, x, y1, y];
    base[k] = y;
  }
  const damped = Math.sqrt(Math.max(omega * omega - decay * decay, 0));
  const swings = [Math.cos, Math.sin].map((wave) =>
    Float64Array.from(base, (_, k) => Math.exp(-decay * k * period) * wave(damped * k * period)),
  );
  return { position: base, swings };
}
