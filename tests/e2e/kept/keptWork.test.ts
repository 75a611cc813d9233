import type { Page } from 'playwright-core';
import { expect, inject, it } from 'vitest';
import { DEFAULT_SCENE, SHELF } from '../../../scenes/index.ts';
import { writeLink } from '../../../shared/files/sceneLink.ts';
import { expectState, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();

const offer = (page: Page) => page.getByRole('region', { name: 'Earlier work' });
const gain = (page: Page) => page.locator('#field-Kp').inputValue();
const accept = (page: Page) =>
  offer(page).getByRole('button', { name: 'Continue where you left off' }).click();

/** How many pages have work in the browser's database. */
const kept = (page: Page) =>
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

it('offers a study as it was left, also to a page that opened a link', async () => {
  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await page.locator('#job-payload').fill('6.5');
  await page.locator('#job-payload').press('Tab');
  await page.getByText('Carry 6.5 kg').waitFor();
  await eventually(() => kept(page)).toBe(1);
  await page.goto('about:blank');
  const scene = { ...DEFAULT_SCENE, parameters: { ...DEFAULT_SCENE.parameters, Kp: 1.2e6 } };
  await page.goto(`${inject('pageUrl')}#${writeLink(scene, SHELF)}`);
  await expectState(page, 'Paused');
  expect(Number(await gain(page))).toBe(1.2e6);
  await accept(page);
  await page.getByText('Carry 6.5 kg').waitFor();
});

it('keeps the work of two tabs apart', async () => {
  const page = await open({ stage: false });
  const other = await open({ stage: false, stored: true });
  await type(page, 'Kp', '1.5e6');
  await eventually(() => kept(page)).toBe(1);
  await type(other, 'Kp', '2.5e6');
  await eventually(() => kept(page)).toBe(2);
  // The other tab is still open and has its own work.
  await page.reload();
  await accept(page);
  await eventually(() => gain(page)).toBe('1.5e6');
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
  await page.locator('.note', { hasText: 'A newer version of Waybench has kept work' }).waitFor();
  const versions = await page.evaluate(async () =>
    (await indexedDB.databases()).map(({ name, version }) => `${name} ${version}`),
  );
  expect(versions).toContain('waybench work 2');
});

it('says once that nothing is kept where the browser refuses', async () => {
  const page = await open({ stage: false });
  await page.evaluate(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('refused', 'SecurityError');
    };
  });
  const note = page.locator('.note', { hasText: 'This browser keeps nothing for this page' });
  await type(page, 'Kp', '1.5e6');
  await note.waitFor();
  await note.waitFor({ state: 'hidden' });
  await type(page, 'Kp', '1.6e6');
  // Long enough for the change to be kept, if it were.
  await page.waitForTimeout(1000);
  expect(await note.isVisible()).toBe(false);
});
