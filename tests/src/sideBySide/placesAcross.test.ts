import { describe, expect, it } from 'vitest';
import { at } from '../../../shared/core/at.ts';
import { placesAcross } from '../../../src/sideBySide/placesAcross.ts';

const machines = [
  { zMin: -0.2, zMax: 0.1 },
  { zMin: -0.1, zMax: 0.3 },
  { zMin: -0.15, zMax: 0.15 },
];

describe('machines side by side', () => {
  it('stand one after the other towards the operator with equal passages, and never in each other', () => {
    const places = placesAcross(machines);
    const edges = machines.map(({ zMin, zMax }, i) => [at(places, i) + zMin, at(places, i) + zMax] as const);
    const passages = edges.slice(1).map(([begin], i) => begin - at(edges, i)[1]);
    expect(passages[0]).toBeGreaterThan(0.05);
    expect(passages[1]).toBeCloseTo(at(passages, 0), 12);
  });

  it('need no passage alone', () => {
    expect(placesAcross([{ zMin: -0.2, zMax: 0.1 }])).toEqual([0.2]);
    expect(placesAcross([])).toEqual([]);
  });
});
