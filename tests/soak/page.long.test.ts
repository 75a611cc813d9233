import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { foldAway } from '../e2e/support/page.ts';
import { launchBrowser } from '../tools/browser.mjs';
import { servePage } from '../tools/servePage.mjs';
import { soakPage } from './page.ts';

const ROUNDS = 8;

/** A software rasteriser spends most of the machine on the 3D picture. */
const foldPicture = (page: Page) => foldAway(page, '.stage > canvas');

it('the built page is the same after each round of work on it: nothing grows, nothing is said on the console', async () => {
  const [served, browser] = await Promise.all([servePage(), launchBrowser()]);
  try {
    const { failures } = await soakPage(browser, served.url ?? '', (rounds) => rounds < ROUNDS, foldPicture);
    expect(failures).toEqual([]);
  } finally {
    await browser.close();
    await served.close();
  }
});
