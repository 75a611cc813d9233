import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { PRESETS } from '../../../scenes/index.ts';
import { readStudy } from '../../../shared/files/studyFile.ts';
import { readStudyLink } from '../../../shared/files/studyLink.ts';
import type { Study } from '../../../shared/study/candidate.ts';
import { metricLeft } from '../../shared/core/metricLeft.ts';
import { violations } from '../support/violations.ts';

/** What a person does in the study, and what has to hold of what it then shows. */

const PARTS = ['Job', 'Sizing', 'Side by side', 'Heat', 'Accuracy', 'Verdict'] as const;
export type Part = (typeof PARTS)[number];

export const jobHeading = (page: Page) => page.getByRole('heading', { name: 'Candidate drives' });

export async function openStudy(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await jobHeading(page).waitFor();
}

export const show = (page: Page, part: Part) =>
  page.locator('.study-bar').getByText(part, { exact: true }).click();

/** Tunes and simulates every candidate, which takes what it takes. */
export async function simulateAll(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Simulate all' }).first().click();
  // Where a screen reader hears of it.
  const said = page.getByRole('status').filter({ hasText: 'All drives are tuned and simulated.' });
  await said.first().waitFor({ timeout: 0 });
}

/** Every part of the results is accessible, and made of figures. */
export async function expectSoundResults(page: Page): Promise<void> {
  for (const part of ['Verdict', 'Accuracy', 'Heat'] as const) {
    await show(page, part);
    expect(await violations(page)).toEqual([]);
    expect(await page.locator('.study').textContent()).not.toMatch(/\b(NaN|undefined|Infinity|null)\b/);
  }
}

/** Every part of a study reads in inches throughout, its drawings included; metric again when it is left. */
export async function expectNoMetric(page: Page): Promise<void> {
  await show(page, 'Job');
  await page.getByText('inch', { exact: true }).click();
  for (const part of PARTS) {
    await show(page, part);
    if (part === 'Verdict') {
      await page.locator('.decisive').waitFor();
      // What is folded is read as well.
      for (const summary of await page.locator('.verdict-content summary').all()) await summary.click();
    }
    const texts = await page.locator('.study').allInnerTexts();
    expect(metricLeft(texts.join()), part).toEqual([]);
  }
  await show(page, 'Job');
  await page.getByText('metric', { exact: true }).click();
}

/** The study as its file has it. */
export async function savedStudy(page: Page): Promise<Study> {
  await page.locator('.study').getByRole('button', { name: 'File' }).click();
  const saved = page.waitForEvent('download');
  await page.getByRole('button', { name: /^Save study/ }).click();
  const chunks = await (await (await saved).createReadStream()).toArray();
  const read = readStudy(Buffer.concat(chunks).toString(), PRESETS);
  if (!('study' in read)) throw new Error(JSON.stringify(read.problems));
  return read.study;
}

/** The link in the report of a study, which has to hold the same study. */
export async function linkOfReport(page: Page, study: Study): Promise<string> {
  await page.locator('.study').getByRole('button', { name: 'File' }).click();
  await page.getByRole('button', { name: 'Report', exact: true }).click();
  const report = page.frameLocator('dialog.paper iframe');
  const link = report.locator('a[href*="#study="]').first();
  await link.waitFor();
  expect(await report.locator('body').textContent()).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
  const address = (await link.getAttribute('href')) ?? '';
  expect(readStudyLink(new URL(address).hash, PRESETS)).toEqual({ study });
  await page.keyboard.press('Escape');
  return address;
}
