import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { expectState, figureText, makeMove, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

/** The text of the file that is saved by pressing a button. */
async function saved(page: Page, press: () => Promise<void>): Promise<string> {
  const download = page.waitForEvent('download');
  await press();
  const stream = await (await download).createReadStream();
  return Buffer.concat(await stream.toArray()).toString();
}

async function openFile(page: Page, name: string, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  await (await chooser).setFiles({ name, mimeType: 'text/plain', buffer: Buffer.from(text) });
}

const field = (page: Page, name: string) => page.locator(`#field-${name}`).inputValue();

it('shows a gain sheet with its margins, which gives the same gains when it is read back', async () => {
  const page = await open({ stage: false, reducedMotion: 'reduce' });
  const before = await field(page, 'Kp');
  await type(page, 'Kp', '1.5e6');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Gain sheet' }).click();
  const sheet = page.getByRole('dialog', { name: 'Gain sheet' });
  await sheet.waitFor();
  const paper = page.frameLocator('iframe[title="Gain sheet as printed"]');
  for (const friction of ['sliding', 'presliding'])
    await paper.getByRole('heading', { name: `Margins of the position loop, guide ${friction}` }).waitFor();
  const json = await saved(page, () => sheet.getByRole('button', { name: 'Save JSON' }).click());
  const csv = await saved(page, () => sheet.getByRole('button', { name: 'Save CSV' }).click());
  await sheet.getByRole('button', { name: 'Close' }).click();

  for (const [name, text] of [
    ['axis.json', json],
    ['axis.csv', csv],
  ] as const) {
    await page.keyboard.press('Control+z');
    await eventually(() => field(page, 'Kp')).toBe(before);
    await openFile(page, name, text);
    await eventually(() => field(page, 'Kp')).toBe('1.5e6');
  }

  await openFile(page, 'axis.json', json.replace('"Kp": 1500000', '"Kp": -1'));
  const refused = page.getByRole('dialog', { name: 'axis.json was not opened' });
  await refused.waitFor();
  expect(await refused.textContent()).toContain('Kp');
  expect(await field(page, 'Kp')).toBe('1.5e6');
});

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

it('keeps a tuning under a name past a reload, compares it, applies it as one step, renames and removes it', async () => {
  const page = await open({ stage: false, reducedMotion: 'reduce' });
  const before = await field(page, 'Kp');
  await type(page, 'Kp', '1.5e6');
  const dialog = page.getByRole('dialog', { name: 'Tuning snapshots' });
  await openSnapshots(page);
  await dialog.getByRole('textbox', { name: 'Name' }).fill('Stiff');
  await page.keyboard.press('Enter');
  await dialog.getByRole('button', { name: 'Apply Stiff' }).waitFor();
  await dialog.getByRole('textbox', { name: 'Name' }).fill('Stiff');
  await page.keyboard.press('Enter');
  expect(await dialog.getByRole('alert').textContent()).toContain('already in use');

  await page.reload();
  await expectState(page, 'Paused');
  expect(await field(page, 'Kp')).toBe(before);
  await openSnapshots(page);
  await dialog.getByRole('button', { name: 'Compare Stiff' }).click();
  expect(await dialog.getByRole('row').count()).toBe(2);
  await dialog.getByRole('button', { name: 'Rename Stiff' }).click();
  await page.keyboard.type('Stiffer');
  await page.keyboard.press('Enter');
  await dialog.getByRole('button', { name: 'Apply Stiffer' }).click();
  await eventually(() => field(page, 'Kp')).toBe('1.5e6');
  await page.keyboard.press('Control+z');
  await eventually(() => field(page, 'Kp')).toBe(before);

  await openSnapshots(page);
  await dialog.getByRole('button', { name: 'Remove Stiffer' }).click();
  await dialog.getByText('No snapshot is kept yet.').waitFor();
  await dialog.getByRole('button', { name: 'Restore it' }).click();
  await dialog.getByRole('button', { name: 'Apply Stiffer' }).waitFor();
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
