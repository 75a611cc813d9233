import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { ranged } from '../../shared/core/format.ts';
import { figureText, makeMove, type } from './support/controls.ts';
import { firstMove } from './support/firstMove.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();
const scene = DEFAULT_SCENE;
const { parameters } = scene;

it('shows the figures that the model computes', async () => {
  const page = await open({ stage: false });
  const move = firstMove();
  await makeMove(page);
  expect(await figureText(page, 'Following error, peak')).toBe(ranged(move.peakError, 'µm'));
  expect(await figureText(page, 'Following error, RMS')).toBe(ranged(move.rmsError, 'µm'));
  expect(await figureText(page, 'Force, RMS')).toBe(ranged(move.rmsForce, 'N'));
  expect(await figureText(page, 'Current, peak')).toBe(ranged(move.peakCurrent, 'A'));
});

it('takes a change back and makes it again', async () => {
  const page = await open({ stage: false });
  const field = page.locator('#field-Kp');
  const before = await field.inputValue();
  await type(page, 'Kp', '1e6');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  expect(await field.inputValue()).toBe(before);
  await page.getByRole('button', { name: 'Redo', exact: true }).click();
  expect(Number(await field.inputValue())).toBe(1e6);
});

it('refuses a value out of range and says what is allowed', async () => {
  const page = await open({ stage: false });
  const field = page.locator('#field-Kp');
  await type(page, 'Kp', '5e12');
  expect(await field.getAttribute('aria-invalid')).toBe('true');
  const problem = page.locator('#field-Kp-problem');
  expect(await problem.textContent()).toMatch(/5·10¹² N\/m.*1·10⁹ N\/m/);
  await field.press('Escape');
  expect(await field.getAttribute('aria-invalid')).toBe('false');
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
  expect(await page.locator('.gauge', { hasText: 'Current' }).first().textContent()).toContain('A RMS');

  await type(page, 'forceConstant', '20 N/√W');
  const made = 20 * Math.sqrt(1.5 * parameters.resistance);
  expect(Number(await page.locator('#field-forceConstant').inputValue())).toBeCloseTo(made, 3);
  await page.getByText('From the motor constant, 20 N/√W').waitFor();
});
