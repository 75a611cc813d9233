import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { expectState, press } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { webmPictures } from './webm.ts';

const { open } = pageTests();

const box = (page: Page) => page.getByRole('region', { name: 'Video of the stage' });

it('records a video of the stage until it is stopped, and saves it', async () => {
  const page = await open();
  await press(page, 'Run');
  await expectState(page, 'Running');
  await page.keyboard.press(';');
  await box(page).getByRole('radio', { name: 'until stopped' }).check();
  await box(page).getByRole('button', { name: 'Record', exact: true }).press('Enter');
  // The count goes on with the pictures that are taken.
  const counts = new Set<string>();
  await eventually(async () => {
    const text = (await box(page).locator('output').textContent()) ?? '';
    if (/^Recording: \d+ s of 60 s$/.test(text)) counts.add(text);
    return counts.size;
  }).toBeGreaterThan(2);
  // The space bar belongs to the axis again.
  await page.keyboard.press('Space');
  await expectState(page, 'Paused');
  const saving = page.waitForEvent('download');
  await page.keyboard.press(';');
  const saved = await saving;
  expect(saved.suggestedFilename()).toMatch(/-stage\.webm$/);
  const video = Buffer.concat(await (await saved.createReadStream()).toArray());
  expect(video.subarray(0, 4).toString('hex')).toBe('1a45dfa3');
  expect(webmPictures(video).length).toBeGreaterThan(1);
  await eventually(() => box(page).locator('output').textContent()).toBe('');
  await box(page).getByRole('button', { name: 'Close' }).click();
  expect(await box(page).isVisible()).toBe(false);
});
