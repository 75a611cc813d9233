import { expect, it } from 'vitest';
import { labelPlace } from '../../../src/stage/labelPlace.ts';

const LABEL = { width: 100, height: 30 };
const READINGS = { left: 250, top: 10, width: 200, height: 120 };

it('a label stands above its point', () => {
  expect(labelPlace({ x: 600, y: 300 }, LABEL, 1000, [READINGS])).toEqual({ left: 550, top: 234 });
});

it('a label at the edge stays inside the stage', () => {
  expect(labelPlace({ x: 10, y: 300 }, LABEL, 1000, [])).toEqual({ left: 0, top: 234 });
  expect(labelPlace({ x: 990, y: 300 }, LABEL, 1000, []).left).toBe(900);
  expect(labelPlace({ x: 500, y: 20 }, LABEL, 1000, []).top).toBe(0);
});

it('a label goes below readings that it would cover, and below the lens beside them', () => {
  expect(labelPlace({ x: 300, y: 150 }, LABEL, 1000, [READINGS]).top).toBe(134);
  const lens = { left: 10, top: 10, width: 235, height: 235 };
  expect(labelPlace({ x: 270, y: 150 }, LABEL, 1000, [lens, READINGS]).top).toBe(249);
});
