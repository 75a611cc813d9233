import { it } from 'vitest';
import { cancelUnderWay, openLongSearch } from './support/longSearch.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('says so when its script cannot be loaded, and tries again', async () => {
  const page = await open({ stage: false });
  await openLongSearch(page);
  // A script of nothing but a mistake: one that is missing would be a fault of the page to these tests.
  const broken = /pretuneWorker/;
  await page.route(broken, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'await import(' }),
  );
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  const status = page.locator('.pretune-status');
  await eventually(() => status.textContent()).toMatch(/^Pretuning stopped: /);
  await page.unroute(broken);
  await cancelUnderWay(page, () => page.getByRole('button', { name: 'Try again', exact: true }).click());
});

it('offers the best tuning so far while better ones are sought', async () => {
  const page = await open({ stage: false });
  const gain = page.locator('#field-Kp');
  const before = await gain.inputValue();
  await openLongSearch(page);
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  const soFar = page.locator('.pretune-so-far');
  await eventually(() => soFar.textContent()).toMatch(
    /^Best so far: .+, peak sensitivity 1\.[0-9]+, settling time .+, RMS error .+ [µn]m, RMS current .+ A/,
  );
  await soFar.getByRole('button', { name: 'Make it live', exact: true }).click();
  await eventually(() => soFar.textContent()).toContain('The search goes on.');
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => page.locator('.pretune-status').textContent()).toContain('Cancelled');
  await eventually(() => gain.inputValue()).not.toBe(before);
});
