import { besselI0, besselI1, besselK0, besselK1 } from './bessel.ts';
import { type HarmonicsAt, remanenceHarmonic } from './harmonics.ts';

/** A stack of round magnets, magnetised along the axis by turns, so that like poles face. */
interface MagnetShaft {
  readonly polePitch: number;
  readonly remanence: number;
  readonly radius: number;
  /** Share α of the pole pitch that is magnet; what is between two magnets counts as air. */
  readonly share: number;
}

/*
 * With a permeability of 1 the stack is a current sheet B_n/μ0 on its surface r = R, in free space. y is the radius r; x from where two
 * north poles face; s_n = sin(nπ/2); k stands for nk.
 *
 *   outside   b_n =  s_n B_n kR I1(kR) K1(kr)      a_n =  s_n B_n kR I1(kR) K0(kr)      r A_n = −s_n B_n R I1(kR) r K1(kr)
 *   inside    b_n =  s_n B_n kR K1(kR) I1(kr)      a_n = −s_n B_n kR K1(kR) I0(kr)      r A_n = −s_n B_n R K1(kR) r I1(kr)
 *
 * Both join at r = R, because I0 K1 + I1 K0 = 1/(kR) (Abramowitz & Stegun 9.6.15). Source: the magnetic vector potential in cylinder
 * coordinates, as in Wang, Jewell, Howe, A general framework for the analysis and design of tubular linear permanent magnet machines,
 * IEEE Trans. Magnetics 35(3), 1999 (from memory).
 */
export function shaftField({ polePitch, remanence, radius, share }: MagnetShaft): HarmonicsAt {
  return (order, r) => {
    const k = (order * Math.PI) / polePitch;
    const source = Math.sin((order * Math.PI) / 2) * remanenceHarmonic(order, remanence, share) * radius;
    if (r < radius) {
      const strength = source * besselK1(k * radius);
      const across = strength * k * besselI1(k * r);
      return { across, along: -strength * k * besselI0(k * r), potential: -strength * r * besselI1(k * r) };
    }
    const strength = source * besselI1(k * radius);
    const across = strength * k * besselK1(k * r);
    return { across, along: strength * k * besselK0(k * r), potential: (-across * r) / k };
  };
}
