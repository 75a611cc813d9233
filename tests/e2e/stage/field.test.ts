import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { choose, expectState, press, readQuantity } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();

const pane = (page: Page) => page.getByRole('figure', { name: 'Inside the motor' });

async function number(page: Page, term: string): Promise<number> {
  const text = await pane(page)
    .locator('dt', { hasText: term })
    .locator('xpath=following-sibling::dd[1]')
    .textContent();
  return readQuantity(text ?? '');
}

it('shows the motor from inside: its coils give the force of the gauge, and a wider gap takes flux', async () => {
  const page = await open({ stage: 'flat' });
  expect(await pane(page).isVisible()).toBe(false);
  await page.keyboard.press('q');
  await pane(page).waitFor();
  await press(page, 'Run');
  await eventually(async () => Math.abs(await number(page, 'Motor force'))).toBeGreaterThan(1);
  await press(page, 'Pause');
  await expectState(page, 'Paused');
  // Written to three digits: a last digit of rounding beside the one per cent.
  await eventually(async () => {
    const [coils, gauge] = [await number(page, 'All coils'), await number(page, 'Motor force')];
    return Math.abs(coils - gauge) <= 0.015 * Math.abs(gauge);
  }).toBe(true);
  expect(await number(page, 'Peak flux density')).toBeGreaterThan(0.05);
  expect(await number(page, 'Flux, of nominal')).toBe(1);

  const gap = page.getByRole('slider', { name: 'Air gap inside the motor, slider' });
  await gap.focus();
  for (let k = 0; k < 4; k++) await gap.press('PageUp');
  await eventually(() => number(page, 'Flux, of nominal')).toBeLessThan(0.97);
  expect(await page.locator('body').textContent()).not.toMatch(/NaN|Infinity|undefined/);

  await page.keyboard.press('q');
  expect(await pane(page).isVisible()).toBe(false);
});

it('keeps the machine on the stage where no field is computed', async () => {
  const page = await open();
  await choose(page, 'Drive', 'Ball screw with rotary motor');
  await page.keyboard.press('q');
  await pane(page).getByText('not for the rotary motor of a screw').waitFor();
  expect(await page.locator('.stage > canvas').isVisible()).toBe(true);
});
