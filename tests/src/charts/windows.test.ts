import { expect, it } from 'vitest';
import { windowFor } from '../../../src/charts/windows.ts';

it.each([
  [1.007, 2],
  [0.5, 1],
  [25.5, 30],
  [0.001, 0.02],
  [1200, 30],
  [null, 2],
])('a cycle of %s s is seen about twice in a window of %s s, as far as there is one', (cycle, window) => {
  expect(windowFor(cycle)).toBe(window);
});
