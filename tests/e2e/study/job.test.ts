import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { metricLeft } from '../../shared/core/metricLeft.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

const said = (page: Page) => page.locator('.job-said').textContent();
const field = (page: Page, name: string) => page.locator(`#job-${name}`);

async function type(page: Page, name: string, text: string): Promise<void> {
  await field(page, name).fill(text);
  await field(page, name).press('Tab');
}

it('says back what is asked for, in either system of units', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await type(page, 'payload', '10 lb');
  await type(page, 'stroke', '10 in');
  // NIST SP 811, 2008, app. B: 1 lb = 0.45359237 kg, 1 in = 25.4 mm.
  expect(await said(page)).toMatch(/^Carry 4\.536\skg over 254\smm/);
  await page.getByText('inch', { exact: true }).click();
  expect(await said(page)).toMatch(/^Carry 10\slb over 10\sin/);
  expect(await field(page, 'payload').inputValue()).toBe('10');
  for (const part of ['Job', 'Sizing'] as const) {
    await show(page, part);
    expect(metricLeft((await page.locator('.study').allInnerTexts()).join()), part).toEqual([]);
  }
});

it('keeps what does not fit, says why, and takes it once it fits', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await type(page, 'stroke', '500');
  expect(await page.locator('#job-stroke-problem').textContent()).toMatch(
    /^500 mm is longer than the travel/,
  );
  await type(page, 'payload', '6 furlong');
  await type(page, 'tableMass', '7');
  expect(await field(page, 'stroke').inputValue()).toBe('500');
  expect(await field(page, 'payload').inputValue()).toBe('6 furlong');
  expect(await said(page)).toMatch(/over 250\smm/);
  await type(page, 'travel', '600');
  expect(await page.locator('#job-stroke-problem').textContent()).toBe('');
  expect(await said(page)).toMatch(/over 500\smm/);
});

it('leaves open what is emptied, and says that a value it needs is missing', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  for (const name of ['rippleLimit', 'growthLimit']) {
    await type(page, name, '');
    expect(await field(page, name).inputValue()).toBe('not asked');
  }
  expect(await said(page)).toMatch(/A scan and a limit of thermal drift are not required\.$/);
  await type(page, 'payload', '');
  expect(await page.locator('#job-payload-problem').textContent()).toBe(
    'Nothing is entered; type a number in kg.',
  );
});

it('says that sizing and simulation wait while an entry is refused, and marks the example as one', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await page.getByText('every value is invented').waitFor();
  // The example comes with its results: another table has to be simulated.
  await type(page, 'tableMass', '9');
  const simulate = page.getByRole('button', { name: 'Simulate all' }).first();
  await type(page, 'payload', 'heavy');
  await page.getByText('Waiting for a valid entry in “Payload”').waitFor();
  expect(await simulate.isDisabled()).toBe(true);
  await show(page, 'Sizing');
  await page.getByText('These figures are for an earlier state of the job: “Payload” was refused').waitFor();
  await show(page, 'Job');
  await type(page, 'payload', '6');
  await eventually(() => simulate.isDisabled()).toBe(false);
  expect(await page.getByText('every value is invented').isVisible()).toBe(false);
  await type(page, 'rippleLimit', 'not required');
  expect(await field(page, 'rippleLimit').inputValue()).toBe('not asked');
  expect(await field(page, 'scanSpeed').isVisible()).toBe(false);
  expect(await said(page)).toContain('A scan is not required.');
});
