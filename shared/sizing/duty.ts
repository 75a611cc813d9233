/**
 * A stretch of a duty over which a quantity runs as a parabola of time, through its values at the start, halfway and at the end:
 * a force under constant jerk and viscous drag does exactly that.
 */
export interface Stretch {
  /** s. */
  readonly time: number;
  readonly start: number;
  readonly middle: number;
  readonly end: number;
}

/** A quantity that stays as it is. */
export function steady(time: number, value: number): Stretch {
  return { time, start: value, middle: value, end: value };
}

/** A quantity that changes evenly. */
export function ramp(time: number, start: number, end: number): Stretch {
  return { time, start, middle: (start + end) / 2, end };
}

/** The value at a share of the stretch, 0 to 1. */
export function valueAt({ start, middle, end }: Stretch, share: number): number {
  const [u, rest] = [share, 1 - share];
  return start * (1 - 2 * u) * rest + 4 * middle * u * rest + end * u * (2 * u - 1);
}

export function totalTime(duty: readonly Stretch[]): number {
  return duty.reduce((sum, { time }) => sum + time, 0);
}

/** ∫f dt of a parabola: Simpson's rule, exact. */
export function integral({ time, start, middle, end }: Stretch): number {
  return (time / 6) * (start + 4 * middle + end);
}

/** ∫f² dt = t (2f1² + 8f2² + 2f3² + 2f1f2 + 2f2f3 − f1f3)/15, exact for a parabola. */
export function squareIntegral({ time, start: a, middle: b, end: c }: Stretch): number {
  return (time / 15) * (2 * a * a + 8 * b * b + 2 * c * c + 2 * a * b + 2 * b * c - a * c);
}

/** Mean of the square over the whole duty. */
export function meanSquare(duty: readonly Stretch[]): number {
  return duty.reduce((sum, each) => sum + squareIntegral(each), 0) / totalTime(duty);
}

/** Root mean square over the whole duty: what heats a motor as the duty does. */
export function rms(duty: readonly Stretch[]): number {
  return Math.sqrt(meanSquare(duty));
}

/** Cyclic duration factor: time under load over time of the cycle (IEC 60034-1, duty type S3). */
export function durationFactor(loadTime: number, restTime: number): number {
  return loadTime / (loadTime + restTime);
}

/** The duty in which every value becomes another one; where that is not linear, a parabola through three points. */
export function mapped(duty: readonly Stretch[], change: (value: number) => number): Stretch[] {
  return duty.map(({ time, start, middle, end }) => ({
    time,
    start: change(start),
    middle: change(middle),
    end: change(end),
  }));
}
