import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { violations } from '../support/violations.ts';
import { dialog, openStudy, run, status } from './toleranceControls.ts';

const { open } = pageTests();

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
  // What the machine itself takes, and a tenth: less than the 80 ms that there are to settle in.
  await eventually(() => page.locator('.tolerance-offer').textContent()).toMatch(
    /settles into ±1\.00 µm in [0-9.]+ ms\. Offered as the limit: [0-9.]+ ms, which is 10 % more, .* dwell of 80\.0 ms/,
  );
  const offered = Number(await page.locator('#limit-settlingTime').inputValue());
  expect(offered).toBeGreaterThan(1);
  expect(offered).toBeLessThan(80);
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
