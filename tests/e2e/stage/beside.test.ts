import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { readQuantity, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();

const card = (page: Page, letter: string) => page.getByRole('region', { name: `Candidate ${letter}:` });

async function error(page: Page, letter: string): Promise<number> {
  const gauge = card(page, letter).locator('.gauge', { hasText: 'Following error' });
  return readQuantity((await gauge.locator('.gauge-value').textContent()) ?? '');
}

it('puts the tuning of the bench beside the one it was opened with, and one hand pulls both', async () => {
  const page = await open({ stage: false });
  await type(page, 'Kp', '1.2e6');
  await page.keyboard.press('Escape');
  await page.locator('body').click({ position: { x: 5, y: 5 } });
  await page.keyboard.press('u');
  await card(page, 'B').waitFor();
  expect(await card(page, 'A').textContent()).toContain('Bench: Tubular motor');
  expect(await card(page, 'B').textContent()).toContain('as opened');
  expect(await page.locator('.common-chart-legend').textContent()).toBe('A unbroken, B dashed');
  const run = page.getByRole('group', { name: 'Run of all candidates' });
  await run.getByRole('button', { name: 'Run', exact: true }).click();
  await eventually(() => error(page, 'A')).toBeGreaterThan(1e-6);

  await page.getByRole('slider', { name: 'Hand that pulls both tables' }).fill('0.02');
  // Each follows its moves to 14 µm by itself.
  for (const letter of ['A', 'B']) await eventually(() => error(page, letter)).toBeGreaterThan(20e-6);
  expect(await page.locator('body').textContent()).not.toMatch(/NaN|Infinity|undefined/);

  await page
    .getByRole('combobox', { name: 'Beside' })
    .selectOption({ label: 'Ball screw with rotary motor' });
  await eventually(() => card(page, 'B').textContent()).toContain('Ball screw');
  await page.getByRole('button', { name: 'Back to the bench' }).click();
  expect(await page.locator('#bar').isVisible()).toBe(true);
  expect(await card(page, 'B').isVisible()).toBe(false);
});
