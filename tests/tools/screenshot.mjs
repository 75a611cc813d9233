import { launchBrowser } from './browser.mjs';
import { servePage } from './servePage.mjs';

/** Makes the README's picture from the running product: node tests/tools/screenshot.mjs */
const PICTURE = new URL('../../src/ui/look/waybench.png', import.meta.url).pathname;

const served = await servePage();
const browser = await launchBrowser();
const page = await browser.newPage({ viewport: { width: 1440, height: 900 }, colorScheme: 'light' });
await page.goto(served.url);
await page.waitForTimeout(6000);
await page.keyboard.press('Space');
// What stands still is drawn at its best.
await page.waitForTimeout(3000);
await page.screenshot({ path: PICTURE });
await browser.close();
await served.close();
