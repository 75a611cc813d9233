import type { Page } from 'playwright-core';
import { openStudy } from '../study/studyControls.ts';
import { cancelUnderWay, openLongSearch } from '../support/longSearch.ts';

/** What a person begins in which a worker is then to fail, and begins again. */

export const pretuneStatus = (page: Page) => page.locator('.pretune-status');

export async function beginPretuning(page: Page): Promise<void> {
  await openLongSearch(page);
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
}

/** It goes on, and is cancelled. */
export async function pretuneAgain(page: Page): Promise<void> {
  await cancelUnderWay(page, () => page.getByRole('button', { name: 'Try again', exact: true }).click());
}

/** A job that nobody has simulated, with one drive, so that what is said is said of it. */
export async function simulateOneDrive(page: Page): Promise<void> {
  await openStudy(page);
  await page.locator('#job-payload').fill('6.5');
  // It takes long enough to be cancelled.
  await page.locator('#job-dwell').fill('3000');
  await page.locator('#job-dwell').press('Tab');
  await page.getByText('Carry 6.5 kg over 250 mm').waitFor();
  for (const drive of [3, 2, 1])
    await page
      .getByRole('button', { name: /^Remove/ })
      .nth(drive)
      .click();
  await page.getByRole('button', { name: 'Simulate all' }).first().click();
}
