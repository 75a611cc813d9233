import { expect, it } from 'vitest';
import { structureName, structuresOf } from '../../../shared/axis/structures.ts';
import { at } from '../../../shared/core/at.ts';
import { expectBetterThanTextbook, sceneWith } from './heldBack.ts';
import { LIGHT } from './run.ts';

/** Fewer trials than the page makes; the other machines and structures in the long tests. */
const SHORT = { stroke: 0.01, dwell: 0.08, currentRate: 8000 };
const FEW = { ...LIGHT, trials: 8, wanted: { rounds: 0, trimmed: 2 }, sensitivities: [], finalists: 1 };

it('a cascade on a machine that was held back is better than the best textbook cascade', async () => {
  const scene = sceneWith(
    'a light ironless axis on a soft mounting',
    at(structuresOf({ encoderSide: 'load' }), 1),
    SHORT,
  );
  expect(structureName(scene.parameters)).toBe('Cascade');
  await expectBetterThanTextbook(scene, FEW);
});
