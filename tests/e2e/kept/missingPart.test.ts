import type { Page } from 'playwright-core';
import { it } from 'vitest';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

const MISSING = /pretuneDialog/;
const pretune = (page: Page) => page.getByRole('button', { name: 'Pretune …', exact: true });

/** A page whose host has no pretuning, and what it says when that is to open. */
async function refused() {
  const page = await open({ stage: false, missing: MISSING });
  await page.route(MISSING, (route) => route.fulfill({ status: 404, body: 'not found' }));
  await pretune(page).click();
  const message = page.getByRole('dialog', { name: 'Pretuning did not open' });
  return {
    page,
    message,
    again: message.getByRole('button', { name: 'Try again' }),
    reload: message.getByRole('button', { name: 'Reload the page' }),
  };
}

it('says so when a part is missing on the host, and opens it when it is tried again or the page is reloaded', async () => {
  const { page, message, again, reload } = await refused();
  await message.getByText('your work is kept in this browser').waitFor();
  await page.unroute(MISSING);
  await again.click();
  const opened = page.getByRole('dialog', { name: 'Automatic pretuning' });
  await opened.or(reload).first().waitFor();
  // Chromium 150 does not ask twice for a module that has failed; 156 does.
  if (await reload.isVisible()) {
    await Promise.all([page.waitForEvent('load'), reload.click()]);
    await pretune(page).click();
    await opened.waitFor();
  }
});

it('offers to reload the page where a part is missing for good', async () => {
  const { page, message, again, reload } = await refused();
  await again.click();
  await message.getByText('Some browsers do not ask twice').waitFor();
  await Promise.all([page.waitForEvent('load'), reload.click()]);
});
