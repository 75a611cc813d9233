import type { Parameters } from '../core/parameters/table.ts';

/*
 * What kilometres travelled do to what rolls; s: distance, m:
 *
 *   w    = k_w s                              wear of the ball nut, along its axis
 *   φ_n  = (1 − w/δ_p)^1.5, not below 0       preload left of the nut; 0 with δ_p = 0
 *   F_n' = φ_n F_n                            its friction goes with the preload; with δ_p = 0 it stays
 *   b'   = b + w − δ_p, not below b           lost motion, once the preload is used up
 *   φ_g  = 1 − s/L_g, not below 0             preload left of the guide: F_c0, F_s0 go with it
 *
 * Sources: wear proportional to distance, Archard, J. Appl. Phys. 24 (1953), from memory; force of rolling contacts as deflection^1.5
 * (Hertz). Assumptions, no source: the rates; that k_w does not fall with the preload; that all of F_n, F_c0 and F_s0 hangs on preload.
 * Nothing is changed where neither nut nor rolling guide is: the force between magnets and coils knows no distance.
 */

/** Share of its preload that the nut has left. */
export function nutPreloadLeft({ nutWear, nutPreload, kilometresTravelled }: Parameters): number {
  return nutPreload > 0 ? Math.max(1 - (nutWear * kilometresTravelled) / nutPreload, 0) ** 1.5 : 1;
}

/** Share of its preload that a rolling guide has left; 1 with a distance of 0, which stands for one that does not wear. */
export function guidePreloadLeft({ guideDistance, kilometresTravelled }: Parameters): number {
  return guideDistance > 0 ? Math.max(1 - kilometresTravelled / guideDistance, 0) : 1;
}

/** The parameters of the machine after its kilometres. The drive keeps those of the new one: nobody has told it. */
export function wornParameters(p: Parameters): Parameters {
  if (p.kilometresTravelled === 0) return p;
  const guide = guidePreloadLeft(p);
  const worn = { ...p, sealFriction: guide * p.sealFriction, sealStiction: guide * p.sealStiction };
  if (p.lead === 0) return worn;
  const beyond = Math.max(p.nutWear * p.kilometresTravelled - p.nutPreload, 0);
  return { ...worn, nutDrag: nutPreloadLeft(p) * p.nutDrag, backlash: p.backlash + beyond };
}
