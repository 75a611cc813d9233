import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../shared/core/at.ts';
import { makeMove } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

const charts = (page: Page) => page.getByRole('group', { name: 'Strip charts' });
const mode = (page: Page) => charts(page).locator('.charts-state').textContent();
const spoken = (page: Page) => charts(page).getByRole('status').textContent();

it('zooms to what is dragged over, pans, and follows the run again with Escape', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  const box = present(await page.locator('.charts-pad').boundingBox());
  expect(await mode(page)).toBe('Live');
  await page.mouse.move(box.x + 0.1 * box.width, box.y + 20);
  await page.mouse.down();
  await page.mouse.move(box.x + 0.17 * box.width, box.y + 30, { steps: 3 });
  await page.mouse.up();
  await eventually(() => mode(page)).toBe('Held');
  // The box says how much time is shown: 7 % of the 2 s it said before.
  const shown = () =>
    page
      .getByLabel('Window', { exact: true })
      .evaluate((box: HTMLSelectElement) => box.selectedOptions[0]?.text);
  await eventually(shown).toMatch(/^zoomed to 1[34]\d ms$/);
  await charts(page).focus();
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Escape');
  await eventually(() => mode(page)).toBe('Live');
});

it('tells the time and the change between two cursors, and no title covers a trace', async () => {
  const page = await open({ stage: false, viewport: { width: 1024, height: 768 } });
  await makeMove(page);
  await charts(page).focus();
  await page.keyboard.press('[');
  await page.keyboard.press('j');
  await page.keyboard.press('{');
  await eventually(() => spoken(page)).toMatch(/Δt −\d+\.?\d* ms, 1\/Δt \d+\.?\d* Hz;.*Setpoint Δ [−\d]/);
  const overlaps = await charts(page)
    .locator('.charts-row')
    .evaluateAll((rows) =>
      rows.map((row) => {
        const [title, plot] = ['.charts-title', '.charts-plot'].map((name) =>
          row.querySelector(name)?.getBoundingClientRect(),
        );
        return (title?.bottom ?? 0) - (plot?.top ?? 0);
      }),
    );
  expect(Math.max(...overlaps)).toBeLessThanOrEqual(0.5);
  await page.keyboard.press('Escape');
  await page.keyboard.press('[');
  await eventually(() => spoken(page)).not.toContain('Δ');
});
