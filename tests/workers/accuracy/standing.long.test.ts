import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { increment } from '../../../workers/accuracy/increment.ts';
import { tunedScene } from './bench.ts';

it('the smallest step of an axis without fault is as small as any that is tried', () => {
  const { smallest, tried } = increment(tunedScene(100, { window: 1e-7 }));
  expect(tried.every(({ made }) => made)).toBe(true);
  expect(smallest).toBe(present(tried.at(-1)).step);
  expect(smallest).toBe(1e-10);
});

it('the smallest step drowns in the jitter of the tool', () => {
  const { smallest } = increment(tunedScene(100, { window: 1e-8, encoderNoise: 1e-6 }));
  expect(smallest).toBeNull();
});
