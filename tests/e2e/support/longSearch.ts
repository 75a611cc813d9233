import type { Page } from 'playwright-core';
import { type } from './controls.ts';

/** Opens the dialog for pretuning, for moves with so long a dwell, ms, that whoever looks at the search or cancels it cannot come too late. */
export async function openLongSearch(page: Page): Promise<void> {
  const find = page.getByPlaceholder('Find a parameter');
  await find.fill('dwell');
  await type(page, 'dwell', '3000');
  await find.fill('');
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
}
