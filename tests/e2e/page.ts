import type { Browser, BrowserContextOptions, Page } from 'playwright-core';
import { afterAll, afterEach, beforeAll, expect } from 'vitest';
import { launchBrowser } from '../tools/browser.mjs';
import { servePage } from '../tools/servePage.mjs';
import { expectState } from './controls.ts';

/** A software rasteriser draws slowly, and its driver says so on the console: not a fault of the page. */
const EXPECTED = [/GPU stall due to ReadPixels/, /Automatic fallback to software WebGL/];

interface OpenOptions extends BrowserContextOptions {
  /** False folds the stage away, which a software rasteriser spends most of the machine on. */
  readonly stage?: boolean;
}

export interface PageTests {
  /** Opens the built page in a browser of its own and waits until the axis is set up. */
  open(options?: OpenOptions): Promise<Page>;
}

/**
 * For one test file: serves the built page; after each test closes what it opened, and fails the test if a page wrote an
 * error or a warning to its console, threw, or asked for anything that was missing or elsewhere.
 */
export function pageTests(): PageTests {
  let served: Awaited<ReturnType<typeof servePage>>;
  const browsers: Browser[] = [];
  const problems: string[] = [];

  beforeAll(async () => {
    served = await servePage();
  });

  afterAll(() => served?.close());

  afterEach(async () => {
    await Promise.all(browsers.splice(0).map((browser) => browser.close()));
    expect(problems.splice(0)).toEqual([]);
  });

  return {
    async open({ stage = true, reducedMotion = 'reduce', ...options } = {}) {
      // Not one for all: a second page in the same browser takes several times as long to set up its 3D picture.
      const browser = await launchBrowser();
      browsers.push(browser);
      const page = await browser.newPage({
        viewport: { width: 1280, height: 720 },
        reducedMotion,
        ...options,
      });
      // From the start: a chooser that opens before anyone listens is lost.
      page.on('filechooser', () => {});
      watch(page, new URL(served.url).origin, problems);
      if (!stage) await page.addInitScript(foldStageAway);
      await page.goto(served.url);
      await expectState(page, reducedMotion === 'reduce' ? 'Paused' : 'Running');
      return page;
    },
  };
}

/** Runs in the page, before anything of it. */
function foldStageAway(): void {
  const sheet = new CSSStyleSheet();
  sheet.replaceSync('.stage { display: none }');
  document.adoptedStyleSheets = [sheet];
}

function watch(page: Page, origin: string, problems: string[]): void {
  page.on('console', (message) => {
    const loud = ['error', 'warning', 'assert'].includes(message.type());
    if (loud && !EXPECTED.some((pattern) => pattern.test(message.text())))
      problems.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => problems.push(`uncaught: ${error.message}`));
  page.on('request', (request) => {
    const url = new URL(request.url());
    const local = url.origin === origin || ['data:', 'blob:'].includes(url.protocol);
    if (!local) problems.push(`asks for ${url.href}`);
  });
  page.on('requestfailed', (request) => problems.push(`failed: ${request.url()}`));
  page.on('response', (response) => {
    if (response.status() >= 400) problems.push(`status ${response.status()}: ${response.url()}`);
  });
}
