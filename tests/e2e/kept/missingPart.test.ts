import { it } from 'vitest';
import { pageTests } from '../support/page.ts';

const { open } = pageTests();

it('says so when a part is missing on the host, and opens it when it is tried again', async () => {
  const missing = /pretuneDialog/;
  const page = await open({ stage: false, missing });
  await page.route(missing, (route) => route.fulfill({ status: 404, body: 'not found' }));
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  const refused = page.getByRole('dialog', { name: 'Pretuning did not open' });
  await refused.getByText('your work is kept in this browser').waitFor();
  await page.unroute(missing);
  await refused.getByRole('button', { name: 'Try again' }).click();
  await page.getByRole('dialog', { name: 'Automatic pretuning' }).waitFor();
});
