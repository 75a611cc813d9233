import { expect } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { startGains } from '../../../shared/axis/loop/startGains.ts';
import { type LoopStructure, structureChanges } from '../../../shared/axis/loop/structures.ts';
import { present } from '../../../shared/core/at.ts';
import {
  defaultParameters,
  type ParameterChanges,
  type Parameters,
} from '../../../shared/core/parameters/table.ts';
import { presetParameters } from '../../../shared/core/preset.ts';
import type { Scene } from '../../../shared/core/scene.ts';
import type { PretuneEffort } from '../../../workers/pretune/pretune.ts';
import { sceneOf } from '../model/sceneOf.ts';
import { pretuned } from './run.ts';

/** Machines that no scene of the shelf has, so that nothing was ever tuned on them. */
export const HELD_BACK: Readonly<Record<string, readonly [preset: string, changes: ParameterChanges]>> = {
  'a light ironless axis on a soft mounting': [
    'tubular-150',
    { payload: 1.5, tableMass: 3, linkStiffness: 2e7 },
  ],
  'a heavy iron-core axis': ['flat-600', { payload: 40, tableMass: 22 }],
  'a screw with its scale on the table': ['screw-600', { payload: 25, encoderSide: 'load' }],
};

const SENSITIVITY = 1.5;

function machine(id: string, changes: ParameterChanges): Parameters {
  const preset = present(PRESETS[id]);
  const plain: Parameters = {
    ...defaultParameters(),
    ...presetParameters(preset, 1),
    program: 'shuttle',
    stroke: 0.05,
    start: -0.025,
    speed: 0.3,
    acceleration: 3,
    jerk: 200,
    dwell: 0.15,
    ...changes,
  };
  return { ...plain, ...startGains(plain, 0.5 * preset.crossover) };
}

export function sceneWith(name: string, structure: LoopStructure, more: ParameterChanges = {}): Scene {
  const [preset, changes] = present(HELD_BACK[name]);
  const p = machine(preset, { ...changes, ...more });
  return sceneOf({ ...p, ...structureChanges(p, structure) }, present(PRESETS[preset]).driveType);
}

/**
 * The pretuned loop keeps the peak sensitivity, keeps to its structure, and does better than the best textbook cascade at the same peak
 * sensitivity.
 */
export async function expectBetterThanTextbook(scene: Scene, effort: PretuneEffort): Promise<void> {
  const { best, textbook, figure } = await pretuned(
    scene,
    { kind: 'peak sensitivity', limit: SENSITIVITY },
    undefined,
    effort,
  );
  const { controller } = scene.parameters;
  expect(best.trip).toBeNull();
  expect(best.peakSensitivity).toBeLessThan(1.02 * SENSITIVITY);
  expect('velocityGain' in best.changes).toBe(controller === 'cascade');
  expect('Kd' in best.changes).toBe(controller === 'PID');
  if (controller === 'PID') {
    const { Kp = 0, Ki = 0, Kd = 0 } = best.changes;
    expect(Ki).toBeLessThanOrEqual(Kp ** 2 / (4 * Kd));
  }
  const rule = present(textbook);
  const settled = (time: number | null) => time ?? Number.POSITIVE_INFINITY;
  expect(figure).toBe('settling time');
  // As in the table: by the settling time where the textbook needs any, else by the following error.
  if (settled(rule.settlingTime) > 0)
    expect(settled(best.settlingTime)).toBeLessThan(0.9 * settled(rule.settlingTime));
  else expect(best.rmsError).toBeLessThan(0.9 * rule.rmsError);
}
