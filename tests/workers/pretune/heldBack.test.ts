import { expect, it } from 'vitest';
import { structureName, structuresOf } from '../../../shared/axis/loop/structures.ts';
import { at, present } from '../../../shared/core/at.ts';
import { expectBetterThanTextbook, sceneWith } from './heldBack.ts';
import { LIGHT, pretuned } from './run.ts';

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

// The observer cancels what nobody knew of the machine; what the feedforward carries, weight and drag, it must not cancel again.
it('on a vertical axis a cascade with an observer settles, and follows as well as one with an integrator', async () => {
  const [, integrating, observing] = structuresOf({ encoderSide: 'load' });
  const best = async (structure: typeof observing) => {
    const vertical = { ...SHORT, inclination: Math.PI / 2, counterbalance: 30 };
    const scene = sceneWith('a light ironless axis on a soft mounting', present(structure), vertical);
    return (await pretuned(scene, { kind: 'peak sensitivity', limit: 1.5 }, undefined, FEW)).best;
  };
  const [one, other] = [await best(integrating), await best(observing)];
  expect(other.changes.observerBandwidth).toBeGreaterThan(0);
  expect(other.changes.resetTime).toBe(0);
  expect(other.changes.forceBias).toBeGreaterThan(20);
  expect(other.settlingTime).not.toBeNull();
  expect(other.rmsError).toBeLessThan(2 * one.rmsError);
});
