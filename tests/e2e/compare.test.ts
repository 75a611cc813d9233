import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { figureText, makeMove, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

const field = (page: Page, name: string) => page.locator(`#field-${name}`).inputValue();

it('keeps a pinned run, and tells what a changed gain made better or worse', async () => {
  const page = await open({ stage: false, reducedMotion: 'reduce' });
  await page.keyboard.press('n');
  await page.getByText('Nothing to pin yet').first().waitFor();
  await makeMove(page);
  await page.getByRole('button', { name: 'Pin run' }).click();
  const pinned = await figureText(page, 'Following error, peak');
  const feedforward = await field(page, 'accelerationFeedforward');
  await type(page, 'accelerationFeedforward', '0');
  await makeMove(page);
  await makeMove(page);
  const now = await figureText(page, 'Following error, peak');
  await page.getByRole('button', { name: 'Differences' }).click();
  const dialog = page.getByRole('dialog', { name: 'Differences from the pinned run' });
  const row = (name: string) =>
    dialog.getByRole('row').filter({ hasText: name }).getByRole('cell').allTextContents();
  const [before, after, change, verdict] = await row('Following error, peak');
  expect([before, after, verdict]).toEqual([pinned, now, 'worse']);
  expect(change).toMatch(/^\+\d/);
  expect((await row('Duration'))[3]).toBe('same');
  expect((await row('Acceleration feedforward')).slice(3)).toEqual(['changed']);
  expect(feedforward).not.toBe('0');
  await page.keyboard.press('Escape');
  await dialog.waitFor({ state: 'hidden' });
  await page.keyboard.press('n');
  await page.getByRole('button', { name: 'Pin run' }).waitFor();
});

it('opens its snapshots with what can be read of a damaged store, and says what cannot', async () => {
  const page = await open({ stage: false, reducedMotion: 'reduce' });
  const kept = { name: 'Sound', tuning: { Kp: 1.5e6 } };
  await page.evaluate(
    (text) => localStorage.setItem('waybench snapshots', text),
    JSON.stringify({
      waybench: 'snapshots',
      version: 1,
      snapshots: [kept, { name: 'Odd', tuning: { Kp: -1 } }],
    }),
  );
  await openSnapshots(page);
  const dialog = page.getByRole('dialog', { name: 'Tuning snapshots' });
  await dialog.getByRole('button', { name: 'Apply Sound' }).waitFor();
  expect(await dialog.getByRole('alert').textContent()).toContain('Position gain');
  expect(await dialog.getByRole('button', { name: 'Apply Odd' }).count()).toBe(0);
});

async function openSnapshots(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Tuning snapshots' }).click();
}
