import type { Page } from 'playwright-core';
import { type } from './controls.ts';
import { eventually } from './patience.ts';

/** Opens the dialog for pretuning, for moves with so long a dwell, ms, that whoever looks at the search or cancels it cannot come too late. */
export async function openLongSearch(page: Page): Promise<void> {
  const find = page.getByPlaceholder('Find a parameter');
  await find.fill('dwell');
  await type(page, 'dwell', '3000');
  await find.fill('');
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
}

/**
 * Begins a search and cancels it as soon as a run of it has ended: in the page itself, so that it cannot end before, however slow the way
 * to the page.
 */
export async function cancelUnderWay(page: Page, begin: () => Promise<void>): Promise<void> {
  const cancelled = page.evaluate(
    () =>
      new Promise<void>((resolve) => {
        const observer = new MutationObserver(() => {
          const status = document.querySelector('.pretune-status')?.textContent ?? '';
          const cancel = [...document.querySelectorAll<HTMLElement>('.pretune button')].find(
            ({ textContent, hidden }) => textContent === 'Cancel' && !hidden,
          );
          if (!cancel || !/: [1-9]\d* of \d+ runs/.test(status)) return;
          observer.disconnect();
          cancel.click();
          resolve();
        });
        observer.observe(document.body, { subtree: true, childList: true, characterData: true });
      }),
  );
  await begin();
  await cancelled;
  await eventually(() => page.locator('.pretune-status').textContent()).toContain('Cancelled');
}
