import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { violations } from '../support/violations.ts';
import { openStudy } from './studyControls.ts';

const { open } = pageTests();

const field = (page: Page, name: string) => page.locator(`#job-${name}`);

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Tab');
}

it('takes drives in and out, and values of an own datasheet', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  const rows = page.locator('.candidate-row:visible');
  await page.getByRole('button', { name: 'Remove candidate D' }).click();
  await page.getByRole('button', { name: 'Remove candidate C' }).click();
  expect(await rows.count()).toBe(2);
  await page.getByLabel('Drive of candidate B').selectOption('tubular');
  await page.getByLabel('Motors in parallel of candidate B').selectOption('2');
  expect(await rows.nth(1).textContent()).toMatch(/600 N continuous/);

  await rows.nth(1).getByRole('button', { name: 'Own datasheet' }).click();
  const dialog = page.getByRole('dialog', { name: 'Candidate B: own datasheet' });
  await dialog.getByLabel('Back-EMF constant').fill('40');
  await dialog.getByLabel('Continuous force').fill('310');
  await dialog.getByLabel('Winding limit').fill('90');
  await dialog.getByLabel('Winding limit').press('Tab');
  // 60 N/A over √3 are 34.6 V·s/m.
  expect(await dialog.textContent()).toMatch(/“Back-EMF constant” \(40\.0 V·s\/m\) is 15 % above/);
  await dialog.getByRole('button', { name: 'Use these values' }).click();
  expect(await dialog.textContent()).toMatch(
    /“Foldback temperature” \(110 °C\) must be less than “Winding limit” \(90 °C\)/,
  );
  expect(await violations(page)).toEqual([]);
  await dialog.getByLabel('Winding limit').fill('140');
  await dialog.getByRole('button', { name: 'Use these values' }).click();
  expect(await rows.nth(1).textContent()).toMatch(/620 N continuous.*3 own values/);
});

it('has no serious violation, in light and dark', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await type(page, 'stroke', '500');
  await field(page, 'motion').selectOption('move list');
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.evaluate(() => document.documentElement.setAttribute('data-theme', 'dark'));
  expect(await violations(page)).toEqual([]);
});
