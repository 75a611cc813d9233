import { expect, it } from 'vitest';
import { expectState, press, type } from './controls.ts';
import { pageTests } from './page.ts';
import { violations } from './violations.ts';

const { open } = pageTests();

it('the page has no serious violation in dark, in its dialogs, at presenter size and tripped', async () => {
  const page = await open({ stage: false, colorScheme: 'dark' });
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await type(page, 'Kp', '1e9');
  await press(page, 'Run');
  await expectState(page, 'Tripped');
  expect(await violations(page)).toEqual([]);
  await page.getByRole('heading', { name: 'Tuning' }).click();
  await page.keyboard.press('p');
  expect(await violations(page)).toEqual([]);
});
