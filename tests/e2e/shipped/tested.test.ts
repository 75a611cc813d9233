import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { violations } from '../support/violations.ts';

const { open } = pageTests();

it('says in Help how it is tested: how often, against what, and what is not', async () => {
  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'Help', exact: true }).click();
  await page.getByRole('button', { name: 'How this is tested' }).click();
  const dialog = page.getByRole('dialog', { name: 'How this is tested' });
  await dialog.waitFor();
  const row = dialog.getByRole('row', { name: /^Published values/ });
  expect(await row.getByRole('cell').first().textContent()).toMatch(/^[1-9]\d*$/);
  await dialog.getByRole('heading', { name: 'Not checked' }).waitFor();
  expect(await violations(page)).toEqual([]);
});
