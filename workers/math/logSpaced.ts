/**
 * `count` numbers from `from` to `to`, two at least, evenly spaced on a logarithmic scale, both
 * ends exact.
 */
export function logSpaced(from: number, to: number, count: number): number[] {
  const points = Array.from({ length: count }, (_, i) => from * (to / from) ** (i / (count - 1)));
  points[count - 1] = to;
  return points;
}
