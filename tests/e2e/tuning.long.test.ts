import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { loadSideMass, motorSideMass } from '../../shared/core/movedMass.ts';
import { awaitFullMove, drag, figure, figureText, makeMove, press, reset, type } from './support/controls.ts';
import { firstMove } from './support/firstMove.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();
const scene = DEFAULT_SCENE;
const { parameters } = scene;

/** ISO 80000-3, m/s². */
const STANDARD_GRAVITY = 9.80665;

it('follows the damping slider by as much as the model does', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  const before = await figure(page, 'Following error, RMS');
  const Kd = await drag(page, 'Kd', -0.06);
  await reset(page);
  await makeMove(page);
  const after = await figure(page, 'Following error, RMS');
  // The field shows the gain to four digits.
  expect(after / firstMove({ Kd }).rmsError).toBeCloseTo(1, 2);
  expect(Math.abs(after / before - 1)).toBeGreaterThan(0.1);
});

/**
 * Force that the position gain has to give while the acceleration lasts, by Newton's second law: what mass and guide take, less
 * what the damping gain gives because the measured speed lags behind by T_f and half a sample. Speed feedforward cancels
 * the viscous part.
 */
function forceOfGain(): number {
  const p = parameters;
  const friction = p.frictionCoefficient * loadSideMass(p) * STANDARD_GRAVITY + p.sealFriction;
  const lag = p.derivativeTime + p.positionDivider / p.currentRate / 2;
  return (motorSideMass(p) + loadSideMass(p) - p.Kd * lag) * p.acceleration + friction;
}

it('takes a slider while the axis runs: without integral and feedforward the gain carries the mass', async () => {
  const page = await open({ stage: false });
  await type(page, 'Ki', 'off');
  await type(page, 'accelerationFeedforward', 'off');
  await press(page, 'Run');
  await awaitFullMove(page);
  const stiff = await figure(page, 'Following error, peak');
  expect((parameters.Kp * stiff) / forceOfGain()).toBeCloseTo(1, 1);

  const Kp = await drag(page, 'Kp', -0.05);
  expect(Kp).toBeLessThan(0.6 * parameters.Kp);
  await awaitFullMove(page);
  const soft = await figure(page, 'Following error, peak');
  expect((Kp * soft) / forceOfGain()).toBeCloseTo(1, 1);
  expect(soft).toBeGreaterThan(1.6 * stiff);
});

it('shows and takes currents as RMS for whoever wants that, and a datasheet’s own quantities', async () => {
  const page = await open({ stage: false });
  await page.locator('.panel-group-title', { hasText: /^Amplifier/ }).click();
  await page.locator('.panel-group-title', { hasText: /^Motor$/ }).click();
  const limit = page.locator('#field-peakCurrent');
  const unit = limit.locator('xpath=..').locator('.field-unit');
  expect(await unit.textContent()).toBe('A peak');
  await makeMove(page);
  const peak = firstMove().peakCurrent;
  expect(await figureText(page, 'Current, peak')).toBe(`${(peak).toPrecision(3)} A peak`);

  await page.locator('.figures').click();
  await page.keyboard.press('a');
  await eventually(() => unit.textContent()).toBe('A RMS');
  expect(Number(await limit.inputValue())).toBeCloseTo(parameters.peakCurrent / Math.SQRT2, 3);
  await eventually(() => figureText(page, 'Current, peak')).toBe(
    `${(peak / Math.SQRT2).toPrecision(3)} A RMS`,
  );
  const gauge = page.locator('.gauge', { hasText: 'Current' }).first();
  await eventually(() => gauge.textContent()).toContain('A RMS');

  await type(page, 'forceConstant', '20 N/√W');
  const made = 20 * Math.sqrt(1.5 * parameters.resistance);
  expect(Number(await page.locator('#field-forceConstant').inputValue())).toBeCloseTo(made, 3);
  await page.getByText('From the motor constant, 20 N/√W').waitFor();
});
