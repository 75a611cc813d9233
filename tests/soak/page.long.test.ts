import { expect, it } from 'vitest';
import { launchBrowser } from '../tools/browser.mjs';
import { servePage } from '../tools/servePage.mjs';
import { soakPage } from './page.ts';

const ROUNDS = 8;

it('the built page is the same after each round of work on it: nothing grows, nothing is said on the console', async () => {
  const [served, browser] = await Promise.all([servePage(), launchBrowser()]);
  try {
    const { failures } = await soakPage(browser, served.url ?? '', (rounds) => rounds < ROUNDS);
    expect(failures).toEqual([]);
  } finally {
    await browser.close();
    await served.close();
  }
});
