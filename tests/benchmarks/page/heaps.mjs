import { usedMemory, workerSession } from '../../tools/memory.mjs';

const MINUTE = 60_000;

/**
 * Memory that page and simulation hold after a collection, buffers included, MB each, after each of `minutes` at full speed.
 *
 * @param {import('playwright-core').Page} page
 * @param {number[]} minutes
 */
export async function heapsAtFullSpeed(page, minutes) {
  await page.getByRole('slider', { name: 'Time scale', exact: true }).press('End');
  const inPage = await page.context().newCDPSession(page);
  const inWorker = await workerSession(await page.context().browser().newBrowserCDPSession());
  const heaps = [];
  const start = Date.now();
  for (const minute of minutes) {
    await page.waitForTimeout(Math.max(0, start + minute * MINUTE - Date.now()));
    const simulated = await page.locator('.clock .time').textContent();
    heaps.push({
      minute,
      simulated,
      page: (await usedMemory((method) => inPage.send(method))) / 1e6,
      worker: (await usedMemory(inWorker)) / 1e6,
    });
  }
  return heaps;
}
