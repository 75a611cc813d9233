import { expect } from 'vitest';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import type { PretuneGoal, PretuneResult } from '../../../shared/protocol/pretune.ts';
import { analyse } from '../../../workers/analysis/analyse.ts';
import type { PretuneEffort } from '../../../workers/pretune/pretune.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';
import { shelfScene } from '../../scenes/runs.ts';
import { here, LIGHT, pretuned } from './run.ts';

/** A short shuttle of the coreless drive, for tests of what a pretuning keeps to. */
export const SCENE = shelfScene('mould-shuttle', { stroke: 0.02, dwell: 0.08 });

/** The rest of a pretuning is as in the page, with few trials. */
export const QUICK: PretuneEffort = { ...LIGHT, trials: 15, sensitivities: [1.4], finalists: 2 };
export const GOAL: PretuneGoal = { kind: 'peak sensitivity', limit: 1.6 };

const DEGREE = Math.PI / 180;

/** The figures of a result's best tuning, standing and sliding, as the loop analysis has them. */
export function figuresOf({ best }: PretuneResult) {
  const p = { ...SCENE.parameters, ...best.changes };
  const standing = startingPoint(p);
  return [standing, { ...standing, friction: 'sliding' as const }].map((point) => analyse(p, point).figures);
}

export const peakOf = (result: PretuneResult) =>
  Math.max(...figuresOf(result).map(({ modulusMargin }) => 1 / modulusMargin.value));

export async function expectMarginsKept(effort: PretuneEffort): Promise<void> {
  const result = await pretuned(SCENE, { kind: 'margins', phase: 50 * DEGREE, gain: 4 }, [here], effort);
  const figures = figuresOf(result);
  expect(figures.every(({ stable }) => stable)).toBe(true);
  const phase = Math.min(...figures.map(({ phaseMargin }) => phaseMargin?.value ?? Number.NaN));
  const gain = Math.min(...figures.map(({ gainMargin }) => gainMargin?.value ?? Number.NaN));
  expect(phase).toBeGreaterThan(50 * DEGREE * 0.99);
  expect(gain).toBeGreaterThan(4 * 0.99);
  // One of them binds: nothing is given away.
  expect(Math.min(phase / (50 * DEGREE), gain / 4)).toBeLessThan(1.02);
}

export async function expectSettlingReached(effort: PretuneEffort): Promise<void> {
  const window = 2e-7;
  const goal: PretuneGoal = { kind: 'settling', window, sensitivityLimit: 1.8 };
  const result = await pretuned(SCENE, goal, [here], effort);
  expect(peakOf(result)).toBeLessThan(1.8 * 1.01);
  expect(result.judged).toContain('200 nm');
  expect(Object.keys(result.best.changes)).not.toContain('window');
  const parameters = { ...SCENE.parameters, ...result.best.changes, window };
  const { settlingTime } = measureRun({ ...SCENE, parameters }, 0.5);
  expect(result.best.settlingTime).not.toBeNull();
  expect(settlingTime).toBeCloseTo(result.best.settlingTime ?? Number.NaN, 3);
}
