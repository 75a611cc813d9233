import { describe, expect, it } from 'vitest';
import { SCENES } from '../../../scenes/index.ts';
import { valueAt } from '../../../shared/core/at.ts';
import { CHANNEL_INDEX } from '../../../shared/core/channels.ts';
import { flexibleModes } from '../../../shared/core/movedMass.ts';
import type { ParameterChanges } from '../../../shared/core/parameters/table.ts';
import type { Engine } from '../../../shared/protocol/axis.ts';
import { startTemperatures } from '../../../workers/model/heat.ts';
import { Plant } from '../../../workers/model/plant.ts';
import { Axis } from '../../../workers/run/axis.ts';
import { batchSolver, concernsPlant, ENGINES } from '../../../workers/solver/engine.ts';
import { stepCount } from '../../../workers/solver/stepCount.ts';
import { bareScene } from '../model/sceneOf.ts';

/** How many steps a period of 62.5 µs takes. */
function steps(changes: ParameterChanges): number {
  const { parameters: p } = bareScene({ currentRate: 16000, ...changes });
  const plant = new Plant(p.motorCount, p.base, flexibleModes(p).length);
  plant.configure(p, startTemperatures(p));
  return stepCount(plant, p, 1 / p.currentRate);
}

/** Table speed after 20 ms without a drive, m/s, of a load that falls faster than its drive would be allowed. */
function fallen(engine: Engine): number {
  const scene = bareScene({
    drive: 'off',
    payload: 180,
    inclination: -Math.PI / 4,
    counterbalance: -20_000,
    frictionCoefficient: 0.5,
    bristleStiffness: 1e8,
    speedLimit: 0.3,
    currentRate: 4000,
  });
  const axis = new Axis(scene, { solver: ENGINES[engine] });
  for (let tick = 0; tick < 80; tick++) axis.step();
  return valueAt(axis.record, CHANNEL_INDEX.tableSpeed);
}

it('an axis without a drive may move faster than the speed limit: its bristles relax up to their cap', () => {
  const speed = fallen('odex');
  expect(Math.abs(speed)).toBeGreaterThan(1.5);
  expect(fallen('batch') / speed).toBeCloseTo(1, 6);
});

describe('the number of steps', () => {
  const soft: ParameterChanges = {
    coilMass: 2,
    tableMass: 6,
    payload: 0,
    linkDamping: 0,
    linkStiffness: 1e7,
  };

  it('is one for every scene of the shelf', () => {
    for (const { parameters } of SCENES) expect(steps({ ...parameters, currentRate: 16000 })).toBe(1);
  });

  it('follows the resonance of the link: h ω ≤ 0.7, ω² = k (1/m1 + 1/m2)', () => {
    expect(steps(soft)).toBe(1);
    const omega = 0.7 * 16000;
    const stiffness = (omega ** 2 * 12) / 8;
    expect(steps({ ...soft, linkStiffness: 0.99 * stiffness })).toBe(1);
    expect(steps({ ...soft, linkStiffness: 1.03 * stiffness })).toBe(2);
    expect(steps({ ...soft, linkStiffness: 4.1 * stiffness })).toBe(3);
  });

  it('follows that of a flexible part', () => {
    const part: ParameterChanges = { mode1: 'table', mode1Mass: 0.1, mode1Frequency: 3000 };
    // 2π 3000 Hz √(1 + 0.1/5.9) · 62.5 µs = 1.19.
    expect(steps({ ...soft, ...part })).toBe(2);
  });

  it('follows the bristles of the guide: 1e5/s are 6.25 a period', () => {
    const guide: ParameterChanges = { sealFriction: 10, sealStiction: 12, bristleStiffness: 1e9 };
    expect(steps({ ...soft, ...guide })).toBe(4);
  });
});

describe('which engine runs', () => {
  const engine = (changes: ParameterChanges) => new Axis(bareScene(changes), { solver: batchSolver }).engine;

  it('is the one that was asked for', () => {
    expect(Object.keys(ENGINES)).toEqual(['odex', 'batch']);
    expect(engine({})).toBe('batch');
    expect(new Axis(bareScene()).engine).toBe('odex');
  });

  const tooStiff: ParameterChanges = { linkStiffness: 2e9, coilMass: 0.05, currentRate: 4000 };

  it('is odex where the plant is too stiff for fixed steps', () => {
    expect(engine(tooStiff)).toBe('odex');
  });

  it('is looked at again when the plant changes, not when gains or commands do', () => {
    expect(concernsPlant({ Kp: 1e6, start: 0.1, speed: 1, filter1: 'notch' })).toBe(false);
    expect(concernsPlant({ Kp: 1e6, payload: 3 })).toBe(true);
    expect(concernsPlant({ drive: 'off' })).toBe(true);
  });

  it('changes when a change of parameters makes the plant too stiff', () => {
    const { linkStiffness, ...others } = tooStiff;
    const axis = new Axis(bareScene({ ...others, linkStiffness: 1e7 }), { solver: batchSolver });
    expect(axis.engine).toBe('batch');
    axis.change({ linkStiffness: linkStiffness ?? 0 });
    expect(axis.engine).toBe('odex');
    for (let k = 0; k < 10; k++) expect(axis.step()).toBe(true);
  });
});
