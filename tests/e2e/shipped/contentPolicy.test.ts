import { expect, inject, it } from 'vitest';
import { foldAway, pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

/* What the page does by itself against its policy, a browser writes to the console, on which every page test fails. */

const { blank } = pageTests();

declare global {
  interface Window {
    /** Directives that were violated. */
    refused: string[];
  }
}

it('runs no script that is written into it or made from a text, and asks no other address', async () => {
  const page = await blank();
  await foldAway(page);
  await page.addInitScript(() => {
    window.refused = [];
    document.addEventListener('securitypolicyviolation', ({ effectiveDirective }) =>
      window.refused.push(effectiveDirective),
    );
  });
  await page.goto(inject('pageUrl'));
  await page.locator('#bar .clock .state').waitFor();
  expect(await page.evaluate(() => window.refused)).toEqual([]);
  await page.evaluate(() => {
    const script = document.createElement('script');
    script.textContent = 'window.refused.push("nothing: the script ran")';
    document.body.append(script);
    const image = new Image();
    image.src = 'https://example.invalid/picture.png';
    void fetch('https://example.invalid/').catch(() => {});
  });
  await eventually(() => page.evaluate(() => [...window.refused].sort())).toEqual([
    'connect-src',
    'img-src',
    'script-src-elem',
  ]);
});
