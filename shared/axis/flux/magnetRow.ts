import { type HarmonicsAt, remanenceHarmonic } from './harmonics.ts';

/** A row of magnets on back iron, magnetised across by turns. */
interface MagnetRow {
  readonly polePitch: number;
  /** Remanence, T, and recoil permeability μ_r. */
  readonly remanence: number;
  readonly permeability: number;
  /** Magnet height h and the share α of the pole pitch that it covers. */
  readonly height: number;
  readonly share: number;
  /** Distance g from the magnets to smooth iron; Infinity: open to air. */
  readonly gap: number;
}

/*
 * Laplace's equation for the scalar potential in magnet and gap, joined at y = h; iron is infinitely permeable, at y = 0 and h + g.
 *
 *   D = sinh(nkh) + μ_r tanh(nkg) cosh(nkh)
 *   gap      b_n = B_n sinh(nkh) cosh(nk(h + g − y))/(D cosh(nkg))       a_n the same with sinh for the cosh in y
 *   magnet   b_n = B_n (1 − μ_r tanh(nkg) cosh(nky)/D)                   a_n = B_n μ_r tanh(nkg) sinh(nky)/D
 *
 * The flux lines are the level lines of A = −Σ b_n/(nk) sin(nkx). Wide poles (k → 0) give the load line B_r h/(h + μ_r g) of the gap law.
 * Source: Zhu, Howe, Bolte, Ackermann, Instantaneous magnetic field distribution in brushless permanent magnet DC motors, part I,
 * IEEE Trans. Magnetics 29(1), 1993 (from memory): their annulus at a large radius. Slots are left out.
 */
export function rowField({ polePitch, remanence, permeability, height, share, gap }: MagnetRow): HarmonicsAt {
  return (order, y) => {
    const k = (order * Math.PI) / polePitch;
    const source = remanenceHarmonic(order, remanence, share);
    const opposite = permeability * Math.tanh(k * gap);
    const divisor = Math.sinh(k * height) + opposite * Math.cosh(k * height);
    if (y < height) {
      const across = source * (1 - (opposite * Math.cosh(k * y)) / divisor);
      return { across, along: (source * opposite * Math.sinh(k * y)) / divisor, potential: -across / k };
    }
    const strength = (source * Math.sinh(k * height)) / divisor;
    const [cosh, sinh] = decay(k, y - height, gap);
    return { across: strength * cosh, along: strength * sinh, potential: (-strength * cosh) / k };
  };
}

/** cosh(k(g − s)) and sinh(k(g − s)) over cosh(kg); both exp(−ks) where the gap is open. */
function decay(k: number, s: number, gap: number): readonly [number, number] {
  if (gap === Infinity) return [Math.exp(-k * s), Math.exp(-k * s)];
  return [Math.cosh(k * (gap - s)) / Math.cosh(k * gap), Math.sinh(k * (gap - s)) / Math.cosh(k * gap)];
}
