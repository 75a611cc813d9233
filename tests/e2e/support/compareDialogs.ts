import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { makeMove, type } from './controls.ts';
import { violations } from './violations.ts';

/** Opens the dialogs in which runs are compared, each with something in it, and looks for faults that axe can find. */
export async function expectFaultlessDialogs(page: Page): Promise<void> {
  await makeMove(page);
  await page.keyboard.press('n');
  await type(page, 'Kp', '1.5e6');
  await makeMove(page);
  await page.getByRole('heading', { name: 'Tuning', exact: true }).click();
  for (const [key, name] of [
    ['i', 'Figures of the last move'],
    ['x', 'Differences from the pinned run'],
    ['s', 'Tuning snapshots'],
  ] as const) {
    await page.keyboard.press(key);
    await page.getByRole('dialog', { name }).waitFor();
    expect(await violations(page)).toEqual([]);
    await page.keyboard.press('Escape');
    await page.getByRole('dialog', { name }).waitFor({ state: 'hidden' });
  }
}
