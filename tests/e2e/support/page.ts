import {
  type BrowserContext,
  type BrowserContextOptions,
  chromium,
  type Page,
  type Request,
} from 'playwright-core';
import { afterEach, beforeEach, expect, inject } from 'vitest';
import { expectState } from './controls.ts';
import { losePatience, patience } from './patience.ts';

/** A software rasteriser draws slowly, and its driver says so on the console: not a fault of the page. */
const EXPECTED = [
  /GPU stall due to ReadPixels/,
  /Automatic fallback to software WebGL/,
  /Service Worker registration blocked by Playwright/,
];

interface OpenOptions extends Pick<BrowserContextOptions, 'reducedMotion' | 'colorScheme' | 'viewport'> {
  /** False folds the stage away, 'flat' its 3D picture alone: a software rasteriser spends most of the machine on it. */
  readonly stage?: boolean | 'flat';
  /** True leaves what is stored, as for another tab of the same person. */
  readonly stored?: boolean;
  /** Files that a test makes be missing. */
  readonly missing?: RegExp;
  /** What is done to the tab before the page is loaded. */
  readonly prepare?: (page: Page) => Promise<unknown>;
}

export interface PageTests {
  /** A blank tab of the browser, with nothing stored; closed after the test. */
  blank(options?: OpenOptions): Promise<Page>;
  /** Opens the built page in such a tab and waits until the axis is set up. */
  open(options?: OpenOptions): Promise<Page>;
}

/** Tabs of one window: a window of its own for each test would cost as much again as the page. */
let shared: Promise<BrowserContext> | null = null;

async function connect(): Promise<BrowserContext> {
  const browser = await chromium.connect(inject('browserEndpoint'), { timeout: 0 });
  // What is kept for offline use would answer in place of what a test makes missing; tests/e2e/shipped has its own window for it.
  return browser.newContext({ viewport: null, serviceWorkers: 'block' });
}

/**
 * For one test file: opens pages; after each test closes what it opened, and fails the test if a page wrote an error or
 * a warning to its console, threw, or asked for anything that was missing or elsewhere.
 */
export function pageTests(): PageTests {
  const url = inject('pageUrl');
  const { origin } = new URL(url);
  const problems: string[] = [];
  let context: BrowserContext;

  beforeEach(async () => {
    shared ??= connect();
    context = await shared;
    context.setDefaultTimeout(patience());
  });

  afterEach(async ({ task }) => {
    for (const page of context.pages()) await page.close();
    const found = problems.splice(0);
    await context.setOffline(false);
    if (found.length > 0 || task.result?.state === 'fail') losePatience();
    expect(found).toEqual([]);
  });

  async function blank({
    viewport = { width: 1280, height: 720 },
    reducedMotion = 'reduce',
    colorScheme = 'light',
  }: OpenOptions = {}): Promise<Page> {
    const page = await context.newPage();
    // From the start: a chooser that opens before anyone listens is lost.
    page.on('filechooser', () => {});
    if (viewport) await page.setViewportSize(viewport);
    await page.emulateMedia({ reducedMotion, colorScheme });
    return page;
  }

  return {
    blank,
    async open({ stage = true, stored = false, missing, prepare, ...options } = {}) {
      const page = await blank(options);
      if (!stored) await forget(page, origin);
      watch(page, origin, problems, missing);
      if (stage !== true) await foldAway(page, stage === 'flat' ? '.stage > canvas' : '.stage');
      await prepare?.(page);
      await page.goto(url);
      await expectState(page, options.reducedMotion === 'no-preference' ? 'Running' : 'Paused');
      return page;
    },
  };
}

/** What an earlier test left in the browser's storage. */
async function forget(page: Page, origin: string): Promise<void> {
  const devTools = await page.context().newCDPSession(page);
  await devTools.send('Storage.clearDataForOrigin', { origin, storageTypes: 'all' });
  await devTools.detach();
}

/** From the start, whatever the page does. */
export async function foldAway(page: Page, selector = '.stage'): Promise<void> {
  await page.addInitScript((folded) => {
    const sheet = new CSSStyleSheet();
    sheet.replaceSync(`${folded} { display: none }`);
    document.adoptedStyleSheets = [sheet];
  }, selector);
}

function watch(page: Page, origin: string, problems: string[], missing = /^$/): void {
  page.on('console', (message) => {
    const loud = ['error', 'warning', 'assert'].includes(message.type());
    if (missing.test(message.location().url)) return;
    if (loud && !EXPECTED.some((pattern) => pattern.test(message.text())))
      problems.push(`console ${message.type()}: ${message.text()}`);
  });
  page.on('pageerror', (error) => problems.push(`uncaught: ${error.message}`));
  page.on('request', (request) => {
    const url = new URL(request.url());
    const local = url.origin === origin || ['data:', 'blob:'].includes(url.protocol);
    if (!local) problems.push(`asks for ${url.href}`);
  });
  page.on('requestfailed', (request) => {
    if (isGivenUp(request) || missing.test(request.url())) return;
    problems.push(`failed: ${request.url()}`);
  });
  page.on('response', (response) => {
    if (response.status() >= 400 && !missing.test(response.url()))
      problems.push(`status ${response.status()}: ${response.url()}`);
  });
}

/** Nobody waits for it any more: its page is left or loaded anew, or its worker ended, before it came. What is missing fails otherwise. */
function isGivenUp(request: Request): boolean {
  return request.failure()?.errorText === 'net::ERR_ABORTED';
}
