import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { PRESETS } from '../../scenes/index.ts';
import { readStudy } from '../../shared/files/studyFile.ts';
import { readStudyLink } from '../../shared/files/studyLink.ts';
import { expectState } from './controls.ts';
import { pageTests } from './page.ts';
import { violations } from './violations.ts';

const { open } = pageTests();

const PARTS = ['Job', 'Sizing', 'Side by side', 'Heat', 'Accuracy', 'Verdict'] as const;

async function openStudy(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await page.getByRole('heading', { name: 'Candidate drives' }).waitFor();
}

const show = (page: Page, part: (typeof PARTS)[number]) =>
  page.locator('.study-bar').getByText(part, { exact: true }).click();

const candidatesTime = async (page: Page) =>
  Number.parseFloat((await page.locator('.candidates-transport .time').textContent())!);

/** Where paused candidates stand, s: the slower ones still run up to the moment of the pause. */
async function restingTime(page: Page): Promise<number> {
  let [before, now] = [Number.NaN, await candidatesTime(page)];
  while (now !== before) {
    await page.waitForTimeout(500);
    [before, now] = [now, await candidatesTime(page)];
  }
  return now;
}

it('takes a customer from the job to a report that repeats it', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openStudy(page);
  await page.locator('#job-payload').fill('6.5');
  await page.locator('#job-payload').press('Tab');
  await page.getByText('Carry 6.5 kg over 250 mm').waitFor();
  // Two drives are enough to tell apart.
  for (const drive of [3, 1])
    await page
      .getByRole('button', { name: /^Remove/ })
      .nth(drive)
      .click();

  await page.getByRole('button', { name: 'Simulate all' }).first().click();
  await page.getByText('All drives are tuned and simulated.').first().waitFor({ timeout: 110_000 });

  await show(page, 'Verdict');
  await page.getByText(/^Take [AB] /).waitFor();
  for (const part of ['Verdict', 'Accuracy', 'Heat'] as const) {
    await show(page, part);
    expect(await violations(page)).toEqual([]);
    expect(await page.locator('.study').textContent()).not.toMatch(/\b(NaN|undefined|Infinity|null)\b/);
  }

  await page.locator('.study').getByRole('button', { name: 'File' }).click();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save study/ }).click();
  const file = await (await saved).createReadStream();
  const chunks: Buffer[] = [];
  for await (const chunk of file) chunks.push(chunk as Buffer);
  const read = readStudy(Buffer.concat(chunks).toString(), PRESETS);
  if (!('study' in read)) throw new Error(read.problems[0]!.message);
  expect(read.study.job.values.payload).toBe(6.5);
  expect(read.study.candidates.map(({ gains }) => gains !== null)).toEqual([true, true]);

  await page.locator('.study').getByRole('button', { name: 'File' }).click();
  await page.getByRole('button', { name: 'Report', exact: true }).click();
  const report = page.frameLocator('dialog.paper iframe');
  await report.getByText('6.5 kg').first().waitFor();
  const text = await report.locator('body').textContent();
  expect(text).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
  const link = await report.locator('a[href*="#study="]').first().getAttribute('href');
  expect(readStudyLink(new URL(link!).hash, PRESETS)).toEqual({ study: read.study });

  // The link opens the same study, tuned, in a page that knows nothing of it.
  await page.keyboard.press('Escape');
  await page.goto('about:blank');
  await page.goto(link!);
  await page.getByText('Carry 6.5 kg over 250 mm').waitFor();
  await show(page, 'Side by side');
  await page.getByText('Every drive is pretuned to the same peak sensitivity').waitFor();
});

it('runs four drives in lockstep, pauses them and looks back', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openStudy(page);
  await show(page, 'Side by side');
  const transport = page.getByRole('group', { name: 'Run of all candidates' });
  await transport.getByRole('button', { name: 'Run', exact: true }).click();
  await page.waitForFunction(
    () => Number.parseFloat(document.querySelector('.candidates-transport .time')?.textContent ?? '') > 1.5,
    null,
    { timeout: 60_000 },
  );
  await page.keyboard.press(' ');
  await transport.getByRole('button', { name: 'Run', exact: true }).waitFor();
  expect(await page.locator('.candidates-pane').textContent()).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
  const stopped = await restingTime(page);
  for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowLeft');
  await page.waitForFunction(
    (before) =>
      Number.parseFloat(document.querySelector('.candidates-transport .time')?.textContent ?? '') < before,
    stopped,
  );
  await transport.getByRole('button', { name: 'Live' }).click();
  await page.waitForFunction(
    (before) =>
      Number.parseFloat(document.querySelector('.candidates-transport .time')?.textContent ?? '') === before,
    stopped,
  );
  expect(await violations(page)).toEqual([]);

  await page
    .getByRole('button', { name: /bench/i })
    .and(page.locator('.candidates-cards button'))
    .nth(2)
    .click();
  await expectState(page, 'Paused');
  await page.getByRole('heading', { name: 'Flat motor, iron-core' }).waitFor();
});

it('is calm on a small screen, in dark and at presenter size', async () => {
  const page = await open({ stage: false, colorScheme: 'dark', viewport: { width: 1024, height: 768 } });
  await openStudy(page);
  await show(page, 'Sizing');
  await page.getByText('Every figure, each with its calculation behind it').waitFor();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('p');
  for (const part of ['Job', 'Verdict'] as const) {
    await show(page, part);
    expect(await violations(page)).toEqual([]);
    const { width, view } = await page.evaluate(() => ({
      width: document.documentElement.scrollWidth,
      view: document.documentElement.clientWidth,
    }));
    expect(width).toBe(view);
  }
});
