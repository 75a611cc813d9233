import { expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { Audit } from '../../../workers/model/audit.ts';
import { measureRun } from '../../../workers/run/measureRun.ts';

it('holds where next to nothing goes through: a staircase of 0.1 nm', () => {
  const scene = sceneById('nanometre-staircase');
  const parameters = { ...scene.parameters, stairStep: 1e-10 };
  const { energyHolds } = measureRun({ ...scene, parameters }, 1);
  expect(energyHolds).toBe(true);
});

it('does not hold beyond a millionth of what went through, nor beyond a nanojoule', () => {
  const audit = new Audit(0);
  expect(audit.holds).toBe(true);
  audit.throughput = 10;
  audit.copper = -0.9e-5;
  expect(audit.holds).toBe(true);
  audit.copper = -1.1e-5;
  expect(audit.holds).toBe(false);
  audit.throughput = 0;
  audit.copper = -0.9e-9;
  expect(audit.holds).toBe(true);
});
