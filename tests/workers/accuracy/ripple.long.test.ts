import { expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { startingPoint } from '../../../shared/protocol/analysis.ts';
import { ripple } from '../../../workers/accuracy/ripple.ts';
import { SampledLoop } from '../../../workers/analysis/sampledLoop.ts';
import { magnitude } from '../../../workers/math/complex.ts';
import { jobOf } from './bench.ts';

it('at 2 mm/s shows the interpolation error of the scale and the cogging of an iron core, each at its period', () => {
  const scene = sceneById('slow-scan-iron');
  const speed = 0.002;
  const { lines, peak, inBand } = ripple(
    scene,
    jobOf({ scanSpeed: speed, scanLength: 0.04, rippleBandwidth: 50 }),
  );
  const causes = lines.map(({ cause }) => cause ?? '').join('; ');
  expect(causes).toMatch(/cogging/);
  expect(causes).toMatch(/interpolation error/);
  // 10 N every 8 mm against the integral of the loop: x = F ω/K_i, v = ω x, with ω = 2π 2/8 1/s.
  const omega = (2 * Math.PI * speed) / 0.008;
  const cogging = present(lines.find(({ cause }) => cause?.startsWith('cogging')));
  const expected = (omega * 10 * omega) / scene.parameters.Ki / speed;
  expect(Math.abs(cogging.amplitude / expected - 1)).toBeLessThan(0.03);
  expect(cogging.inBand / cogging.amplitude).toBeCloseTo(1, 6);

  // What the scale tells wrongly the table does as far as the loop follows: a |T| at ω = 2π v/p, as a speed ω a |T|.
  const { interpolation1, signalPeriod } = scene.parameters;
  const frequency = speed / signalPeriod;
  const p = { ...scene.parameters, interpolation1: 0, interpolation2: 0, cogging1: 0 };
  const loop = new SampledLoop(p, { ...startingPoint(p), friction: 'sliding', speed });
  const wave = 2 * Math.PI * frequency;
  const told = (interpolation1 * magnitude(loop.at(wave).closedLoop) * wave) / speed;
  const scale = present(lines.find(({ cause }) => cause?.startsWith('interpolation error, once')));
  expect(Math.abs(scale.period / signalPeriod - 1)).toBeLessThan(1e-3);
  expect(Math.abs(scale.amplitude / told - 1)).toBeLessThan(0.03);

  // Unfiltered and in its band: a Butterworth low-pass of second order leaves 1/√(1 + (f/f_b)⁴) of it.
  expect(scale.inBand / scale.amplitude).toBeCloseTo(1 / Math.sqrt(1 + (frequency / 50) ** 4), 3);
  expect(inBand.peak).toBeLessThan(peak);
  expect(inBand.peak).toBeGreaterThan(cogging.inBand);
});
