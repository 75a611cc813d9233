import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { dialog, openStudy, run, status } from './toleranceControls.ts';

const { open } = pageTests();

it('is cancelled at once, and keeps what it has found', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await page.locator('#tolerance-runs').fill('100000');
  await run(page);
  await eventually(() => page.locator('.tolerance-yield').textContent()).toMatch(/of the machines are good/);
  await eventually(() => status(page)).toMatch(/^\d+ of 100000 machines have run, about \d+ (s|min) left$/);
  await dialog(page).getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => status(page)).toMatch(
    /^Cancelled\. What is shown comes from \d+ of 100000 machines\.$/,
  );
  expect(await dialog(page).getByRole('button', { name: 'Build and run', exact: true }).isEnabled()).toBe(
    true,
  );
});

it('says where something cannot be built, and what to do', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  const line = page.locator('.spread-line', { has: page.locator('select').first() }).first();
  await line.getByRole('combobox', { name: 'How it spreads' }).selectOption({ label: 'evenly between' });
  await line.getByRole('textbox', { name: 'from' }).fill('9');
  await run(page);
  await eventually(() => line.textContent()).toMatch(/“to” must be more than “from”\. Exchange them/);
  await line.getByRole('textbox', { name: 'from' }).fill('-3');
  await run(page);
  await eventually(() => line.textContent()).toMatch(/−3 kg is outside/);
  await line.getByRole('button', { name: /^Remove/ }).click();
  await dialog(page).getByRole('button', { name: 'Add a parameter', exact: true }).click();
  expect(await page.locator('.spread-line').count()).toBe(6);
});

it('leaves a limit alone that a person has entered', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await page.locator('#limit-settlingTime').fill('77');
  await page.locator('#tolerance-runs').fill('8');
  await run(page);
  await eventually(() => status(page)).toMatch(/^8 machines in [0-9.]+ s\.$/);
  expect(await page.locator('#limit-settlingTime').inputValue()).toBe('77');
  expect(await page.locator('.tolerance-offer').textContent()).toBe('');
});

it('says where a limit comes from as long as it is the one that was offered', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  const origin = page.locator('.tolerance-offer');
  const limit = page.locator('#limit-settlingTime');
  await eventually(() => origin.textContent()).toMatch(/Offered as the limit:/);
  const offered = await limit.inputValue();
  await limit.fill('77');
  await limit.press('Enter');
  await eventually(() => origin.textContent()).toBe('');
  await limit.fill(offered);
  await limit.press('Enter');
  await eventually(() => origin.textContent()).toMatch(/Offered as the limit:/);
});
