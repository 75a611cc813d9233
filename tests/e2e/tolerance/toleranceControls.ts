import type { Page } from 'playwright-core';

export const dialog = (page: Page) => page.getByRole('dialog', { name: 'How sure is this?' });
export const status = (page: Page) => page.locator('.tolerance-status').textContent();

export async function openStudy(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'How sure is this? …', exact: true }).click();
  await dialog(page).waitFor();
}

export const run = (page: Page) =>
  dialog(page).getByRole('button', { name: 'Build and run', exact: true }).click();
