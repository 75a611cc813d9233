import { expect, it } from 'vitest';
import { choose } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it('learns the cogging of the iron-core motor from a slow scan, and says when the table is out of date', async () => {
  const page = await open({ stage: false });
  await choose(page, 'Scene', 'Slow scan of a mould surface, iron-core motor');
  await page.locator('.panel-group-title', { hasText: /^Compensation/ }).click();
  const note = page.getByRole('region', { name: 'Cogging table' });
  expect(await note.textContent()).toContain('No cogging table has been learned.');
  await note.getByRole('button', { name: 'Learn cogging table', exact: true }).click();
  await expect
    .poll(() => note.textContent(), { timeout: 60_000 })
    .toMatch(/\d+ forces from .* peak 1\d\.\d N\./);
  await note.getByRole('img', { name: 'Force of the cogging table over position' }).waitFor();
  expect(await page.locator('#field-coggingCompensation').isChecked()).toBe(true);

  await note.getByRole('button', { name: 'Remove cogging table', exact: true }).click();
  await expect.poll(() => note.textContent()).toContain('No cogging table has been learned.');
});
