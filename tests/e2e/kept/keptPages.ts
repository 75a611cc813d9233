import type { Page } from 'playwright-core';

export const offer = (page: Page) => page.getByRole('region', { name: 'Earlier work' });
export const gain = (page: Page) => page.locator('#field-Kp').inputValue();
export const accept = (page: Page) =>
  offer(page).getByRole('button', { name: 'Continue where you left off' }).click();

/** How many pages have work in the browser's database. */
export const kept = (page: Page) =>
  page.evaluate(async () => {
    const found = await indexedDB.databases();
    if (!found.some(({ name }) => name === 'waybench work')) return 0;
    return new Promise<number>((resolve, reject) => {
      const opening = indexedDB.open('waybench work');
      opening.onerror = () => reject(opening.error);
      opening.onsuccess = () => {
        const count = opening.result.transaction('work').objectStore('work').count();
        count.onsuccess = () => {
          opening.result.close();
          resolve(count.result);
        };
      };
    });
  });
