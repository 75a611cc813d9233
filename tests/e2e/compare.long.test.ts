import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../shared/core/at.ts';
import { expectFaultlessDialogs } from './support/compareDialogs.ts';
import { expectState, makeMove, type } from './support/controls.ts';
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

it.each(['light', 'dark'] as const)(
  'has dialogs, in which runs are compared, without an accessibility fault that axe can find, in %s',
  async (colorScheme) => {
    await expectFaultlessDialogs(await open({ stage: false, colorScheme }));
  },
);

it('has the energy account of the run among the figures of a move, within what is allowed', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  await page.keyboard.press('i');
  const account = page.getByRole('dialog', { name: 'Figures of the last move' }).getByText('Energy account');
  const [, share, allowed] = present(
    /run: (.+) of the throughput is unaccounted for; (.+) is allowed/.exec(
      (await account.textContent()) ?? '',
    ),
  ).map(powerOfTen);
  expect(share).toBeGreaterThan(0);
  expect(share).toBeLessThan(present(allowed));
  expect(allowed).toBe(1e-6);
});

/** `2.3·10⁻⁹` as a number. */
function powerOfTen(text: string): number {
  const [, factor = '1', power = ''] = /^(?:([\d.]+)·)?10(.*)$/.exec(text) ?? [];
  const digits = [...power].map((each) => (each === '⁻' ? '-' : '⁰¹²³⁴⁵⁶⁷⁸⁹'.indexOf(each))).join('');
  return Number(factor) * 10 ** Number(digits);
}

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

async function openSnapshots(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Tuning snapshots' }).click();
}
