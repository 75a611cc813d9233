import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { violations } from '../support/violations.ts';

const { open } = pageTests();

const dialog = (page: Page) => page.getByRole('dialog', { name: 'How sure is this?' });
const status = (page: Page) => page.locator('.tolerance-status').textContent();

async function openStudy(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'How sure is this? …', exact: true }).click();
  await dialog(page).waitFor();
}

const run = (page: Page) => dialog(page).getByRole('button', { name: 'Build and run', exact: true }).click();

/** Short moves, so that machines run quickly. */
async function shortenMoves(page: Page): Promise<void> {
  await page.locator('#parameter-search').fill('stroke');
  await page.locator('#field-stroke').fill('4');
  await page.locator('#field-stroke').press('Enter');
  await page.locator('#parameter-search').fill('dwell');
  await page.locator('#field-dwell').fill('80');
  await page.locator('#field-dwell').press('Enter');
  await page.locator('#parameter-search').fill('');
}

it('builds machines, shows their yield, and puts the worst on the bench as one step of undo', async () => {
  const page = await open({ stage: false });
  await shortenMoves(page);
  await openStudy(page);
  // The dwell that there is to settle in.
  expect(await page.locator('#limit-settlingTime').inputValue()).toBe('80');
  await page.locator('#tolerance-runs').fill('80');
  await run(page);
  await eventually(() => status(page)).toMatch(/^80 machines in [0-9.]+ s\.$/);
  const text = await page.locator('.tolerance-yield').textContent();
  expect(text).toMatch(
    /^[0-9.]+ % of the machines are good: \d+ of 80\. 95 % confidence interval [0-9.]+ % to [0-9.]+ %/,
  );
  expect(await page.locator('.tolerance-figures tbody tr').count()).toBe(5);
  expect(await page.locator('.tolerance-chart svg.drawing').count()).toBe(2);
  expect(await violations(page)).toEqual([]);
  expect(await dialog(page).textContent()).not.toMatch(/NaN|undefined|Infinity/);
  await dialog(page)
    .getByRole('button', { name: /^Worst machine on the bench/ })
    .click();
  await eventually(() =>
    page.getByRole('combobox', { name: 'Scene' }).locator('option:checked').textContent(),
  ).toMatch(/^Mould shuttle, press to measuring station, machine \d+$/);
  await page.locator('#parameter-search').fill('payload');
  await eventually(() => page.locator('#field-payload').inputValue()).not.toBe('4');
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await eventually(() => page.locator('#field-payload').inputValue()).toBe('4');
});

it('is cancelled at once, and keeps what it has found', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await page.locator('#tolerance-runs').fill('100000');
  await run(page);
  await eventually(() => page.locator('.tolerance-yield').textContent()).toMatch(/of the machines are good/);
  await eventually(() => status(page)).toMatch(/^\d+ of 100000 machines have run, about \d+ (s|min) left$/);
  await dialog(page).getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => status(page)).toMatch(
    /^Cancelled\. What is shown comes from \d+ of 100000 machines\.$/,
  );
  expect(await dialog(page).getByRole('button', { name: 'Build and run', exact: true }).isEnabled()).toBe(
    true,
  );
});

it('says where something cannot be built, and what to do', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  const line = page.locator('.spread-line', { has: page.locator('select').first() }).first();
  await line.getByRole('combobox', { name: 'How it spreads' }).selectOption({ label: 'evenly between' });
  await line.getByRole('textbox', { name: 'from' }).fill('9');
  await run(page);
  await eventually(() => line.textContent()).toMatch(/“to” must be more than “from”\. Exchange them/);
  await line.getByRole('textbox', { name: 'from' }).fill('-3');
  await run(page);
  await eventually(() => line.textContent()).toMatch(/−3 kg is outside/);
  await line.getByRole('button', { name: /^Remove/ }).click();
  await dialog(page).getByRole('button', { name: 'Add a parameter', exact: true }).click();
  expect(await page.locator('.spread-line').count()).toBe(6);
});
