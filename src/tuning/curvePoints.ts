/** Points of an SVG polyline over a drawing of this size: the largest value of each of its columns, scaled to ± `peak`. */
export function curvePoints(values: ArrayLike<number>, peak: number, width: number, height: number): string {
  const columns = Math.min(values.length, 2 * width);
  const half = height / 2;
  return Array.from({ length: columns }, (_, column) => {
    const from = Math.floor((column * values.length) / columns);
    const to = Math.floor(((column + 1) * values.length) / columns);
    let largest = 0;
    for (let k = from; k < to; k++) {
      const value = values[k] ?? 0;
      if (Math.abs(value) > Math.abs(largest)) largest = value;
    }
    const x = (width * column) / Math.max(columns - 1, 1);
    const y = half - (peak > 0 ? (0.95 * half * largest) / peak : 0);
    return `${x.toFixed(1)},${y.toFixed(1)}`;
  }).join(' ');
}
