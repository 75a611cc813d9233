import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { violations } from '../support/violations.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

const said = (page: Page) => page.locator('.job-said').textContent();
const field = (page: Page, name: string) => page.locator(`#job-${name}`);

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Tab');
}

it('takes drives in and out, and values of an own datasheet', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  const rows = page.locator('.candidate-row:visible');
  await page.getByRole('button', { name: 'Remove candidate D' }).click();
  await page.getByRole('button', { name: 'Remove candidate C' }).click();
  expect(await rows.count()).toBe(2);
  await page.getByLabel('Drive of candidate B').selectOption('tubular');
  await page.getByLabel('Motors in parallel of candidate B').selectOption('2');
  expect(await rows.nth(1).textContent()).toMatch(/600 N continuous/);

  await rows.nth(1).getByRole('button', { name: 'Own datasheet' }).click();
  const dialog = page.getByRole('dialog', { name: 'Candidate B: own datasheet' });
  await dialog.getByLabel('Back-EMF constant').fill('40');
  await dialog.getByLabel('Continuous force').fill('310');
  await dialog.getByLabel('Winding limit').fill('90');
  await dialog.getByLabel('Winding limit').press('Tab');
  // 60 N/A over √3 are 34.6 V·s/m.
  expect(await dialog.textContent()).toMatch(/“Back-EMF constant” \(40\.0 V·s\/m\) is 15 % above/);
  await dialog.getByRole('button', { name: 'Use these values' }).click();
  expect(await dialog.textContent()).toMatch(
    /“Fold-back temperature” \(110 °C\) must be less than “Winding limit” \(90 °C\)/,
  );
  expect(await violations(page)).toEqual([]);
  await dialog.getByLabel('Winding limit').fill('140');
  await dialog.getByRole('button', { name: 'Use these values' }).click();
  expect(await rows.nth(1).textContent()).toMatch(/620 N continuous.*3 own values/);
});

it('has no serious violation, in light and dark', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await type(page, 'stroke', '500');
  await field(page, 'motion').selectOption('move list');
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await page.evaluate(() => document.documentElement.setAttribute('data-theme', 'dark'));
  expect(await violations(page)).toEqual([]);
});

it('folds away what means nothing at present', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  for (const name of ['counterbalanced', 'processForce', 'coolantTemperature'])
    expect(await field(page, name).isVisible(), name).toBe(false);
  await field(page, 'inclination').fill('90');
  // The page moves when the field above is left; the click still counts.
  await field(page, 'cooling').click();
  await field(page, 'process').selectOption('sine');
  for (const name of ['counterbalanced', 'coolantTemperature', 'processForce', 'processFrequency'])
    expect(await field(page, name).isVisible(), name).toBe(true);
});

it('reads a pasted list of moves and times', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await field(page, 'motion').selectOption('move list');
  expect(await field(page, 'stroke').isVisible()).toBe(false);
  await field(page, 'moves').fill('to (mm)\ttime (s)\tdwell (s)\n0\t0,4\t0,1\n250\t0,5\t0\n');
  expect(await page.locator('#job-moves-problems').textContent()).toMatch(/250 mm is outside the travel/);
  // What is typed and not yet used outlives other changes.
  await type(page, 'payload', '6');
  expect(await field(page, 'moves').inputValue()).toContain('0,4');
  await page.getByRole('button', { name: 'Centre it on the travel' }).click();
  const cells = page.getByRole('region', { name: 'What was understood' }).getByRole('cell');
  expect(await cells.allTextContents()).toEqual(
    [
      ['125 mm', '−125 mm', '0.4 s', '0.1 s'],
      ['−125 mm', '125 mm', '0.5 s', '0 s'],
    ].flat(),
  );
  await page.getByRole('button', { name: 'Use this list' }).click();
  expect(await said(page)).toMatch(/through a list of 2\smoves in 1\ss/);
});

it('puts a drive on an air bearing with a finer scale, and keeps what fits when the drive changes', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await page.getByLabel('Guide of candidate A').selectOption('air');
  await page.getByLabel('Encoder of candidate A').selectOption('interferential');
  await page.locator('.study-bar').getByText('Sizing', { exact: true }).click();
  await page.getByText('; air bearing, interferential scale').first().waitFor();
  await page.locator('.study-bar').getByText('Job', { exact: true }).click();
  const grade = page.getByLabel('Screw of candidate A', { exact: true });
  const ends = page.getByLabel('Ends of the screw of candidate A', { exact: true });
  expect([await grade.isVisible(), await ends.isVisible()]).toEqual([false, false]);
  await page.getByLabel('Drive of candidate A').selectOption('screw');
  expect(await page.getByLabel('Guide of candidate A').inputValue()).toBe('air');
  await page.getByLabel('Encoder of candidate A').selectOption('motor');
  expect([await grade.isVisible(), await ends.isVisible()]).toEqual([true, true]);

  // Ends that are fixed and a screw that is stretched come with figures of their own.
  expect(await ends.inputValue()).toBe('supported');
  await ends.selectOption('stretched3');
  await show(page, 'Sizing');
  await page.getByText('; air bearing, screw fixed–fixed, stretched for 3 K').first().waitFor();
  await page.getByText('Axial load on the bearings of the screw').waitFor();
  await show(page, 'Job');

  await page.getByLabel('Drive of candidate A').selectOption('tubular');
  await ends.waitFor({ state: 'hidden' });
  expect(await page.getByLabel('Encoder of candidate A').inputValue()).toBe('optical');
});
