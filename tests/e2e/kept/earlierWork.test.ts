import { expect, it } from 'vitest';
import { expectState, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { violations } from '../support/violations.ts';
import { gain, kept, offer } from './keptPages.ts';

const { open } = pageTests();

it('lists earlier work after a fresh start, to be opened or deleted with the keyboard', async () => {
  const page = await open({ stage: false });
  await type(page, 'Kp', '1.5e6');
  await eventually(() => kept(page)).toBe(1);
  await page.reload();
  await expectState(page, 'Paused');
  await offer(page).getByRole('button', { name: 'Start fresh' }).click();
  await type(page, 'Kp', '2.5e6');
  await eventually(() => kept(page)).toBe(2);

  const dialog = page.getByRole('dialog', { name: 'Earlier work' });
  const openDialog = async () => {
    await page.getByRole('button', { name: 'File', exact: true }).click();
    await page.getByRole('button', { name: 'Earlier work …' }).click();
    await dialog.waitFor();
  };
  await openDialog();
  expect(await violations(page)).toEqual([]);
  const entries = dialog.getByRole('listitem');
  // What is on the page now is not earlier work.
  expect(await entries.count()).toBe(1);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await eventually(() => gain(page)).toBe('1.5e6');

  // What was on the page meanwhile is in the list in its place.
  await openDialog();
  expect(await entries.count()).toBe(1);
  await page.keyboard.press('Tab');
  await page.keyboard.press('Tab');
  await page.keyboard.press('Enter');
  await dialog.getByText('No earlier work is kept.').waitFor();
  await page.keyboard.press('Enter');
  await dialog.getByRole('button', { name: /^Open / }).click();
  await eventually(() => gain(page)).toBe('2.5e6');
});
