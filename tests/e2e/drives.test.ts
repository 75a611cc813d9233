import { expect, it } from 'vitest';
import { expectState, figure, makeMove, press, putDrives, reset, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

it('puts another drive on the bench with gains that make its moves', async () => {
  await putDrives(await open({ stage: false }), ['screw']);
});

it('trips at an absurd gain, says why, and recovers', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  const before = await figure(page, 'Following error, peak');
  await type(page, 'Kp', '1e9');
  await press(page, 'Run');
  await expectState(page, 'Tripped');
  const banner = page.getByRole('region', { name: 'Trip' });
  await banner.waitFor();
  expect(await banner.textContent()).toMatch(/following error|speed|unstable|travel/i);
  expect(await page.locator('body').textContent()).not.toMatch(/NaN|Infinity|undefined/);

  await banner.getByRole('button', { name: 'Undo last change' }).click();
  await reset(page);
  expect(await banner.isVisible()).toBe(false);
  await makeMove(page);
  expect(await figure(page, 'Following error, peak')).toBe(before);
});
