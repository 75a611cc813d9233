import { expect, it } from 'vitest';
import { expectState, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { accept, gain, kept, offer } from './keptPages.ts';

const { open } = pageTests();

it('offers what was tuned when the page is opened again, with its steps of undo', async () => {
  const page = await open({ stage: false });
  const before = await gain(page);
  expect(await offer(page).isVisible()).toBe(false);
  await type(page, 'Kp', '1.5e6');
  await eventually(() => kept(page)).toBe(1);
  await page.reload();
  await expectState(page, 'Paused');
  // The page is as it always opens until the offer is accepted.
  expect(await gain(page)).toBe(before);
  await offer(page).getByText('1 change').waitFor();
  await accept(page);
  await eventually(() => gain(page)).toBe('1.5e6');
  await page.keyboard.press('Control+z');
  await eventually(() => gain(page)).toBe(before);
});

it('leaves the work of a newer version alone, and says so', async () => {
  const page = await open({ stage: false });
  await page.evaluate(
    () =>
      new Promise<void>((resolve, reject) => {
        const opening = indexedDB.open('waybench work', 2);
        opening.onupgradeneeded = () => opening.result.createObjectStore('of tomorrow');
        opening.onsuccess = () => {
          opening.result.close();
          resolve();
        };
        opening.onerror = () => reject(opening.error);
      }),
  );
  await type(page, 'Kp', '1.5e6');
  await page
    .locator('.note', { hasText: 'This browser holds work from a newer version of Waybench' })
    .waitFor();
  const versions = await page.evaluate(async () =>
    (await indexedDB.databases()).map(({ name, version }) => `${name} ${version}`),
  );
  expect(versions).toContain('waybench work 2');
});
