import { valueAt } from '../../core/at.ts';
import { seeded } from '../../core/seeded.ts';

/**
 * Latin hypercube: each dimension is cut into as many layers as there are points, every layer holds one point at a random
 * place within it, and the layers of one dimension are shuffled against those of the others. Source: McKay, Beckman,
 * Conover, Technometrics 21 (1979), 239–245.
 */
export function latinHypercube(
  dimensions: number,
  seed: number,
  points: number,
): (index: number) => Float64Array {
  const random = seeded(seed);
  const columns = Array.from({ length: dimensions }, () => {
    const layers = Float64Array.from({ length: points }, (_, k) => k);
    shuffle(layers, random);
    return layers.map((layer) => (layer + random()) / points);
  });
  return (index) => Float64Array.from(columns, (column) => valueAt(column, index));
}

/** Fisher and Yates. */
function shuffle(values: Float64Array, random: () => number): void {
  for (let k = values.length - 1; k > 0; k--) {
    const other = Math.floor(random() * (k + 1));
    const kept = valueAt(values, k);
    values[k] = valueAt(values, other);
    values[other] = kept;
  }
}
