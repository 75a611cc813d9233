import { launchBrowser } from '../../tools/browser.mjs';
import { servePage } from '../../tools/servePage.mjs';

/**
 * What is measured on the built page in a headless browser, with the stage folded away.
 *
 * @template T
 * @param {(page: import('playwright-core').Page) => Promise<T>} measure
 */
export async function onFoldedPage(measure) {
  const served = await servePage();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    page.setDefaultTimeout(0);
    await page.goto(served.url);
    await page.locator('#bar .clock .state', { hasText: 'Running' }).waitFor();
    await page.addStyleTag({ content: '#stage > .stage { display: none }' });
    return await measure(page);
  } finally {
    await browser.close();
    await served.close();
  }
}
