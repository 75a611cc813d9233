import { expect, it } from 'vitest';
import { leastDampedMode } from '../../../shared/figures/leastDampedMode.ts';

const PERIOD = 1e-3;

/** Eigenvalues z = exp(s T) of s = −D ω ± j ω √(1 − D²). */
function eigenvalues(modes: readonly (readonly [frequency: number, damping: number])[]) {
  const both = modes.flatMap(([frequency, damping]) => {
    const omega = 2 * Math.PI * frequency * PERIOD;
    const size = Math.exp(-damping * omega);
    const turn = omega * Math.sqrt(1 - damping * damping);
    return [
      [size * Math.cos(turn), size * Math.sin(turn)],
      [size * Math.cos(turn), -size * Math.sin(turn)],
    ] as const;
  });
  return {
    eigenvaluesRe: Float64Array.from(both, ([re]) => re),
    eigenvaluesIm: Float64Array.from(both, ([, im]) => im),
  };
}

it('finds the oscillation with the least damping, whatever its frequency', () => {
  const mode = leastDampedMode(
    eigenvalues([
      [12, 0.3],
      [80, 0.05],
      [200, 0.2],
    ]),
    PERIOD,
  );
  expect(mode?.frequency).toBeCloseTo(80, 9);
  expect(mode?.damping).toBeCloseTo(0.05, 9);
});

it('finds none where all are well damped', () => {
  expect(leastDampedMode(eigenvalues([[12, 0.7]]), PERIOD)).toBeNull();
});
