import { expect, it } from 'vitest';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('pretunes with progress, refuses an impossible goal at its field, and leaves the gains alone when cancelled', async () => {
  const page = await open({ stage: false });
  const gain = await page.locator('#field-Kp').inputValue();
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  const status = page.locator('.pretune-status');
  const limit = page.getByLabel('Peak sensitivity', { exact: true });
  await limit.fill('9');
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  expect(await page.locator('#goal-sensitivity-problem').textContent()).toContain('9 is outside 1.1 to 4');
  expect(await status.textContent()).toBe('');
  await limit.fill('1.6');
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  await eventually(() => status.textContent()).toMatch(/[1-9]\d* of \d+ runs/);
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => status.textContent()).toContain('Cancelled');
  await page.keyboard.press('Escape');
  expect(await page.locator('#field-Kp').inputValue()).toBe(gain);
});

it('says so when its script cannot be loaded, and tries again', async () => {
  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  // A script of nothing but a mistake: one that is missing would be a fault of the page to these tests.
  const broken = /pretuneWorker/;
  await page.route(broken, (route) =>
    route.fulfill({ contentType: 'text/javascript', body: 'await import(' }),
  );
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  const status = page.locator('.pretune-status');
  await eventually(() => status.textContent()).toMatch(/^Pretuning stopped: /);
  await page.unroute(broken);
  await page.getByRole('button', { name: 'Try again', exact: true }).click();
  await eventually(() => status.textContent()).toMatch(/: \d+ of \d+ runs/);
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => status.textContent()).toContain('Cancelled');
});
