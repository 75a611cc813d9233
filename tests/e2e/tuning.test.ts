import { expect, it } from 'vitest';
import { ranged } from '../../shared/core/format.ts';
import { figureText, makeMove, type } from './support/controls.ts';
import { firstMove } from './support/firstMove.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

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
