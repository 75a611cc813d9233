import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../shared/core/at.ts';
import { openStudy, show } from './study/studyControls.ts';
import { expectState, press, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

const box = async (page: Page, selector: string) => present(await page.locator(selector).boundingBox());
const area = ({ width, height }: { width: number; height: number }) => width * height;

it('the presenter size gives the machine most of the picture, with one chart and one gauge', async () => {
  const page = await open();
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

it('a trip is told above the machine and covers nothing of it', async () => {
  const page = await open();
  await type(page, 'Kp', '1e9');
  await press(page, 'Run');
  await expectState(page, 'Tripped');
  const [banner, stage] = [await box(page, '.trip'), await box(page, '#stage')];
  expect(banner.y + banner.height).toBeLessThanOrEqual(stage.y);
});

it('at twice the size of a small window nothing lies over anything', async () => {
  const page = await open({ viewport: { width: 720, height: 450 } });
  const parts = await Promise.all(
    ['#bar', '#caption', '#stage', '#chart-area'].map((part) => box(page, part)),
  );
  for (const [k, lower] of parts.entries()) {
    const upper = parts[k - 1];
    if (upper) expect(lower.y, `part ${k}`).toBeGreaterThanOrEqual(upper.y + upper.height - 1);
  }
  expect((await box(page, '#stage')).height).toBeGreaterThan(120);
  expect((await box(page, '#panel')).x).toBeGreaterThanOrEqual(
    (await box(page, '#stage')).x + (await box(page, '#stage')).width - 1,
  );
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
