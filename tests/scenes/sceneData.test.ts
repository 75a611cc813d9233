import { readdirSync } from 'node:fs';
import { describe, expect, test } from 'vitest';
import { DEFAULT_SCENE, SCENES, sceneById } from '../../scenes/index.ts';
import { holdingForce } from '../../shared/axis/gravity.ts';
import { parameterWarnings } from '../../shared/axis/warnings.ts';
import { checkParameters } from '../../shared/core/check.ts';
import { loadSideMass, motorSideMass } from '../../shared/core/movedMass.ts';
import { defaultParameters, type Parameters } from '../../shared/core/parameters/table.ts';

function parametersOf(name: string): Parameters {
  return sceneById(name).parameters;
}

test('every scene file is on the shelf, under a title of its own', () => {
  const files = readdirSync(new URL('../../scenes/', import.meta.url)).filter((file) =>
    file.endsWith('.json'),
  );
  expect(SCENES.map(({ id }) => `${id}.json`).sort()).toEqual(files.sort());
  expect(SCENES.length).toBeGreaterThanOrEqual(9);
  expect(new Set(SCENES.map(({ title }) => title)).size).toBe(SCENES.length);
});

describe.each(SCENES)('$id', (scene) => {
  const p = scene.parameters;

  test('is legal and gives no warning', () => {
    expect(checkParameters(p, defaultParameters())).toEqual({ changes: p, problems: [] });
    expect(parameterWarnings(p)).toEqual([]);
  });

  test('says in one sentence what to look for', () => {
    expect(scene.lookFor).toMatch(/^[A-Z0-9].*\.$/);
    expect(scene.lookFor.match(/[.!?](\s|$)/g)).toHaveLength(1);
  });

  test('its feedforward and bias fit what it moves and holds', () => {
    expect(p.accelerationFeedforward / (motorSideMass(p) + loadSideMass(p))).toBeCloseTo(1, 3);
    expect(Math.abs(p.forceBias - holdingForce(p))).toBeLessThan(0.1);
  });

  // Routh's criterion on s³ M + s² Kd + s Kp + Ki: necessary before delay and resonances are counted.
  test('its gains can stabilise a rigid mass', () => {
    expect(p.Kd * p.Kp).toBeGreaterThan((motorSideMass(p) + loadSideMass(p)) * p.Ki);
  });
});

test('the scene that opens is a lively shuttle on the tubular drive', () => {
  expect(DEFAULT_SCENE).toBe(SCENES[0]);
  expect(DEFAULT_SCENE.driveType).toBe('tubular');
  expect(DEFAULT_SCENE.parameters).toMatchObject({ program: 'shuttle', drive: 'on', stroke: 0.25, speed: 1 });
});

test('the two slow scans, and the two free pulls, differ in nothing but the drive and its gains', () => {
  const job = (name: string) => {
    const {
      program,
      start,
      stroke,
      scanSpeed,
      speed,
      payload,
      tableMass,
      sealFriction,
      frictionCoefficient,
      drive,
    } = parametersOf(name);
    return {
      program,
      start,
      stroke,
      scanSpeed,
      speed,
      payload,
      tableMass,
      sealFriction,
      frictionCoefficient,
      drive,
    };
  };
  expect(job('slow-scan-iron')).toEqual(job('slow-scan-coreless'));
  expect(job('free-pull-iron')).toEqual(job('free-pull-coreless'));
});

// Free vibration of two masses on a spring, ω² = k (1/m1 + 1/m2): e.g. Den Hartog, Mechanical Vibrations, 1956, ch. 3 (from memory).
test('the soft coil mounting rings where its scene says', () => {
  const p = parametersOf('soft-coil-mounting');
  const omega = Math.sqrt(p.linkStiffness * (1 / motorSideMass(p) + 1 / loadSideMass(p)));
  expect(omega / (2 * Math.PI)).toBeGreaterThan(195);
  expect(omega / (2 * Math.PI)).toBeLessThan(205);
  expect(p.filter1 === 'notch' && p.filter1Frequency).toBe(200);
});

test('the misaligned motor is a tenth of a pole pitch off', () => {
  const p = parametersOf('four-motors-one-misaligned');
  expect(p.motorCount).toBe(4);
  expect(p.misalignment3 / p.polePitch).toBeCloseTo(0.1, 9);
  expect([p.misalignment2, p.misalignment4]).toEqual([0, 0]);
});

test('the staircase stands on air, two motors and a scale of 1 nm', () => {
  const p = parametersOf('nanometre-staircase');
  const friction = [p.frictionCoefficient, p.stictionCoefficient, p.sealFriction, p.sealStiction];
  expect(friction).toEqual([0, 0, 0, 0]);
  expect(p).toMatchObject({ motorCount: 2, payload: 25, encoderResolution: 1e-9, stairStep: 5e-9 });
});

// A pull is felt in steps where the cogging is steeper than the hand's spring and stronger than the friction.
test('the iron-core table has detents that a hand can feel', () => {
  const p = parametersOf('free-pull-iron');
  const steepest = (p.cogging1 * 2 * Math.PI) / p.cogging1Period;
  expect(steepest).toBeGreaterThan(2 * p.handStiffness);
  const normal = loadSideMass(p) * 9.80665 + p.attraction;
  expect(p.cogging1 + p.cogging2 + p.cogging3).toBeGreaterThan(
    p.frictionCoefficient * normal + p.sealFriction,
  );
  const coreless = parametersOf('free-pull-coreless');
  expect([coreless.cogging1, coreless.cogging2, coreless.cogging3, coreless.attraction]).toEqual([
    0, 0, 0, 0,
  ]);
});

test('the soft base is on mounts of 12 Hz', () => {
  expect(parametersOf('soft-base')).toMatchObject({ base: true, baseFrequency: 12 });
});
