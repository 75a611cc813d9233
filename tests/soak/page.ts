import type { Browser, Page } from 'playwright-core';
import { pressUntil } from '../e2e/support/pressUntil.ts';
import { usedMemory, workerSession } from '../tools/memory.mjs';
import { SLOWLY } from '../tools/slowly.mjs';
import { type Holding, whatGrew } from './growth.ts';

/* The built page at work for long: it runs and is tuned, its views are opened and left, and after every round it is as it was. */

/** A software rasteriser says on the console that it is slow. */
const EXPECTED = [/GPU stall due to ReadPixels/, /Automatic fallback to software WebGL/];

interface PageSoak {
  readonly rounds: number;
  readonly first: Holding;
  readonly last: Holding;
  readonly failures: readonly string[];
}

/** Opens the page in a window of its own, prepared before it is loaded, and plays rounds as long as `goesOn`. */
export async function soakPage(
  browser: Browser,
  url: string,
  goesOn: (rounds: number) => boolean,
  prepare: (page: Page) => Promise<unknown> = async () => {},
): Promise<PageSoak> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 720 } });
  // What a round waits for comes late on a busy machine; nothing here passes or fails by the clock.
  context.setDefaultTimeout(600_000);
  try {
    const page = await context.newPage();
    const failures: string[] = [];
    page.on('console', (message) => {
      if (!EXPECTED.some((each) => each.test(message.text()))) failures.push(`console: ${message.text()}`);
    });
    page.on('pageerror', (error) => failures.push(`uncaught: ${error.message}`));
    await prepare(page);
    await page.goto(url);
    await stateOf(page).filter({ hasText: 'Running' }).waitFor();
    await page.evaluate(SLOWLY);
    const inPage = await context.newCDPSession(page);
    const inWorker = await workerSession(await browser.newBrowserCDPSession());
    await inPage.send('Performance.enable');
    const holdings: Holding[] = [];
    while (failures.length === 0 && goesOn(holdings.length)) {
      await playRound(page);
      const text = (await page.locator('body').textContent()) ?? '';
      const wrong = /.{0,60}\b(NaN|undefined|Infinity)\b.{0,60}/s.exec(text)?.[0];
      if (wrong) failures.push(`On the page: ${wrong}`);
      const pageHeap = await usedMemory((method) => inPage.send(method as 'Performance.enable'));
      const workerHeap = await usedMemory(inWorker);
      const { metrics } = await inPage.send('Performance.getMetrics');
      const metric = (name: string) => metrics.find((each) => each.name === name)?.value ?? Number.NaN;
      holdings.push({
        pageHeap,
        workerHeap,
        nodes: metric('Nodes'),
        listeners: metric('JSEventListeners'),
        workers: page.workers().length,
      });
    }
    const quarter = holdings[Math.floor(holdings.length / 4)];
    const last = holdings.at(-1);
    if (!quarter || !last) throw new Error(failures.join('\n'));
    if (failures.length === 0) failures.push(...whatGrew(holdings));
    return { rounds: holdings.length, first: quarter, last, failures };
  } finally {
    await context.close();
  }
}

const stateOf = (page: Page) => page.locator('#bar .clock .state');

/** What a person at work does, and takes back in the end. */
async function playRound(page: Page): Promise<void> {
  await tune(page);
  await lookAround(page);
  await pretune(page);
  await changeScene(page);
  await takeBack(page);
}

async function tune(page: Page): Promise<void> {
  const field = page.locator('.field', { has: page.locator('#field-Kd') });
  const slider = field.locator('input[type=range]');
  for (const key of ['ArrowRight', 'ArrowRight', 'ArrowLeft', 'ArrowRight']) {
    await slider.press(key);
    await page.waitForTimeout(200);
  }
  await page.locator('#field-Kp').fill('5000000');
  await page.locator('#field-Kp').press('Enter');
  await page.keyboard.press('Escape');
}

/** Through what opens by a key. */
async function lookAround(page: Page): Promise<void> {
  await page.locator('body').click({ position: { x: 1, y: 1 } });
  for (const [key, title] of [
    ['?', 'Keys'],
    ['s', /snapshots/i],
    ['o', 'Lessons'],
  ] as const) {
    const dialog = page.getByRole('dialog', { name: title });
    await pressUntil(page, key, dialog);
    await pressUntil(page, 'Escape', dialog, 'hidden');
  }
  await pressUntil(page, 'b', page.locator('.loop-verdict', { hasText: /table/ }));
  await page.getByText('Motion', { exact: true }).first().click();
  await pressUntil(page, 'u', page.getByRole('region', { name: 'Candidate B:' }));
  await page.getByRole('button', { name: 'Back to the bench' }).click();
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await page.getByRole('heading', { name: 'Candidate drives' }).waitFor();
  await page.getByRole('button', { name: 'Back to the bench' }).click();
}

/** Begun, and cancelled in the middle of it. */
async function pretune(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  const status = page.locator('.pretune-status');
  await status.filter({ hasText: /: \d+ of \d+ runs/ }).waitFor();
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await status.filter({ hasText: 'Cancelled' }).waitFor();
  await pressUntil(page, 'Escape', status, 'hidden');
}

async function changeScene(page: Page): Promise<void> {
  const scene = page.getByRole('combobox', { name: 'Scene', exact: true });
  const titles = await scene.locator('option').allTextContents();
  for (const title of titles.slice(1, 4)) {
    await scene.selectOption({ label: title });
    await page.waitForTimeout(500);
  }
}

async function takeBack(page: Page): Promise<void> {
  await page.getByRole('button', { name: 'Undo', exact: true }).evaluate((undo: HTMLButtonElement) => {
    while (!undo.disabled) undo.click();
  });
  const transport = page.getByRole('group', { name: 'Run', exact: true });
  const run = transport.getByRole('button', { name: 'Run', exact: true });
  while ((await stateOf(page).textContent()) !== 'Running') {
    if (await run.isVisible()) await run.click();
    await page.waitForTimeout(200);
  }
}
