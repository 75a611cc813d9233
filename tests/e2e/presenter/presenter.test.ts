import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { openStudy, show } from '../study/studyControls.ts';
import { pageTests } from '../support/page.ts';
import { box } from './box.ts';

const { open } = pageTests();

const area = ({ width, height }: { width: number; height: number }) => width * height;

it('the presenter size gives the machine most of the picture, with one chart and one gauge', async () => {
  const page = await open({ stage: 'flat' });
  const atTheDesk = await box(page, '#stage');
  await page.keyboard.press('p');
  const presented = await box(page, '#stage');
  expect(area(presented) / area(atTheDesk)).toBeGreaterThan(1.5);
  expect(area(presented)).toBeGreaterThan(0.5 * 1280 * 720);
  const shown = (selector: string) => page.locator(selector).filter({ visible: true }).count();
  expect([await shown('.charts-row'), await shown('.gauge')]).toEqual([1, 1]);
  // Letters of 1/32 of the height: see the rule in presenter.css.
  expect(await page.evaluate(() => getComputedStyle(document.documentElement).fontSize)).toBe('22.5px');
  await page.locator('#choose-chart').selectOption('Current');
  expect(await page.locator('.charts-row').filter({ visible: true }).getAttribute('aria-label')).toBe(
    'Current',
  );
  expect(await page.locator('.gauge').filter({ visible: true }).textContent()).toMatch(/^Current/);
});

/** Everything to be pressed that is in sight and smaller than a finger needs, px. */
const smallTargets = (page: Page) =>
  page.evaluate((least) => {
    const found: string[] = [];
    for (const target of document.querySelectorAll(
      'button, select, summary, a[href], input, label:has(input)',
    )) {
      // A box inside its label is pressed by the label.
      if (target.matches('label > input, input[type="range"]') || !target.checkVisibility()) continue;
      const { width, height } = target.getBoundingClientRect();
      if (width === 0 || (width >= least && height >= least)) continue;
      const name = target.getAttribute('aria-label') ?? target.textContent ?? '';
      found.push(
        `${target.tagName} “${name.trim().slice(0, 30)}” ${Math.round(width)} × ${Math.round(height)}`,
      );
    }
    return [...new Set(found)];
  }, 28);

it('under a finger every target is 28 px or more, in every view', async () => {
  const page = await open({ stage: false });
  const devTools = await page.context().newCDPSession(page);
  await devTools.send('Emulation.setTouchEmulationEnabled', { enabled: true });
  expect(await page.evaluate(() => matchMedia('(any-pointer: coarse)').matches)).toBe(true);
  expect(await smallTargets(page)).toEqual([]);
  await page.keyboard.press('b');
  await page.locator('.loop-tools').first().waitFor();
  expect(await smallTargets(page), 'loop').toEqual([]);
  await openStudy(page);
  for (const part of ['Job', 'Sizing', 'Side by side', 'Heat', 'Accuracy', 'Verdict'] as const) {
    await show(page, part);
    expect(await smallTargets(page), part).toEqual([]);
  }
});
