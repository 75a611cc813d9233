/** Slow motion takes this share of the pace that was asked for, of real time at most. */
const SHARE = 1 / 20;

/** Simulated seconds per second in slow motion, where `asked` is the pace otherwise. */
export function slowPace(asked: number): number {
  return SHARE * Math.min(asked, 1);
}
