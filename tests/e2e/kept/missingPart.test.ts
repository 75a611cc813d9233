import { it } from 'vitest';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

it('says so when a part is missing on the host, and opens it when it is tried again or the page is reloaded', async () => {
  const missing = /pretuneDialog/;
  const page = await open({ stage: false, missing });
  await page.route(missing, (route) => route.fulfill({ status: 404, body: 'not found' }));
  const pretune = page.getByRole('button', { name: 'Pretune …', exact: true });
  await pretune.click();
  const refused = page.getByRole('dialog', { name: 'Pretuning did not open' });
  await refused.getByText('your work is kept in this browser').waitFor();
  await page.unroute(missing);
  await refused.getByRole('button', { name: 'Try again' }).click();
  const opened = page.getByRole('dialog', { name: 'Automatic pretuning' });
  const reload = refused.getByRole('button', { name: 'Reload the page' });
  await opened.or(reload).first().waitFor();
  // Chromium 150 does not ask twice for a module that has failed; 156 does.
  if (await reload.isVisible()) {
    await Promise.all([page.waitForEvent('load'), reload.click()]);
    await pretune.click();
    await opened.waitFor();
  }
});

it('offers to reload the page where a part is missing for good', async () => {
  const missing = /pretuneDialog/;
  const page = await open({ stage: false, missing });
  await page.route(missing, (route) => route.fulfill({ status: 404, body: 'not found' }));
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  const refused = page.getByRole('dialog', { name: 'Pretuning did not open' });
  await refused.getByRole('button', { name: 'Try again' }).click();
  await refused.getByText('Some browsers do not ask twice').waitFor();
  await Promise.all([
    page.waitForEvent('load'),
    refused.getByRole('button', { name: 'Reload the page' }).click(),
  ]);
});
