import { expect, it } from 'vitest';
import { sceneById } from '../../../scenes/index.ts';
import { present } from '../../../shared/core/at.ts';
import { ripple } from '../../../workers/accuracy/ripple.ts';
import { jobOf } from './bench.ts';

it('at 2 mm/s shows the interpolation error of the scale and the cogging of an iron core, each at its period', () => {
  const scene = sceneById('slow-scan-iron');
  const { lines } = ripple(scene, jobOf({ scanSpeed: 0.002, scanLength: 0.04, rippleBandwidth: 50 }));
  const causes = lines.map(({ cause }) => cause ?? '').join('; ');
  expect(causes).toMatch(/cogging/);
  expect(causes).toMatch(/interpolation error/);
  // 10 N every 8 mm against the integral of the loop: x = F ω/K_i, v = ω x, with ω = 2π 2/8 1/s.
  const omega = (2 * Math.PI * 0.002) / 0.008;
  const cogging = present(lines.find(({ cause }) => cause?.startsWith('cogging')));
  const expected = (omega * 10 * omega) / scene.parameters.Ki / 0.002;
  expect(Math.abs(cogging.amplitude / expected - 1)).toBeLessThan(0.03);
  expect(cogging.inBand / cogging.amplitude).toBeCloseTo(1, 6);
});
