import { expect, it } from 'vitest';
import { expectState, press } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();

it('is off until it is asked for, then shows what of the motor force is loudest', async () => {
  const page = await open({ stage: 'flat' });
  const pane = page.getByRole('figure', { name: 'Sound of the motor force' });
  expect(await pane.isVisible()).toBe(false);
  await page.keyboard.press(',');
  await pane.waitFor();
  if (await page.getByRole('button', { name: 'Run', exact: true }).isVisible()) await press(page, 'Run');
  await expectState(page, 'Running');
  await eventually(() => pane.textContent()).toMatch(/\d.* m?N at \d+.*Hz/);
  expect(await page.locator('body').textContent()).not.toMatch(/NaN|Infinity|undefined/);
  await page.keyboard.press(',');
  expect(await pane.isVisible()).toBe(false);
});
