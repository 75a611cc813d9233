import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { expectState } from '../controls.ts';
import { pageTests } from '../page.ts';
import { eventually } from '../patience.ts';
import { violations } from '../violations.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

const candidatesTime = async (page: Page) =>
  Number.parseFloat(present(await page.locator('.candidates-transport .time').textContent()));

it('runs four drives in lockstep, pauses them and looks back', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openStudy(page);
  await show(page, 'Side by side');
  const transport = page.getByRole('group', { name: 'Run of all candidates' });
  await transport.getByRole('button', { name: 'Run', exact: true }).click();
  await eventually(() => candidatesTime(page)).toBeGreaterThan(1.5);
  await page.keyboard.press(' ');
  await transport.getByRole('button', { name: 'Run', exact: true }).waitFor();
  expect(await page.locator('.candidates-pane').textContent()).not.toMatch(/\b(NaN|undefined|Infinity)\b/);
  const paused = await candidatesTime(page);
  for (let k = 0; k < 5; k++) await page.keyboard.press('ArrowLeft');
  await eventually(() => candidatesTime(page)).toBeLessThan(paused);
  await transport.getByRole('button', { name: 'Live' }).click();
  // The slower ones still run up to the moment of the pause.
  await eventually(() => candidatesTime(page)).toBeGreaterThanOrEqual(paused);
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
  await page.getByText('All figures; each opens to its calculation').waitFor();
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
