import { launchBrowser } from '../../tools/browser.mjs';
import { servePage } from '../../tools/servePage.mjs';
import { besidePace } from './besidePace.mjs';
import { heapsAtFullSpeed } from './heaps.mjs';
import { dragTasks } from './mainThread.mjs';
import { slide, watchFrames } from './slides.mjs';

const FOLDED = '.stage { display: none }';
/** On a busy machine much takes long, ms. */
const PATIENCE = 300_000;
const SLIDES = 30;
const DRAG = 5;
const BESIDE = 8;

/**
 * Drives the built page in a headless browser, as a person at the gain sliders would: as it is; with the stage folded away, which tells
 * what drawing by software costs; and so on a processor that is four times slower. Then four drives side by side, and memory over `minutes`
 * at full speed.
 *
 * @param {number[]} minutes
 */
export async function pagePace(minutes) {
  const served = await servePage();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
    page.setDefaultTimeout(PATIENCE);
    const scripts = [];
    page.on('response', (response) => {
      if (response.url().endsWith('.js')) scripts.push(new URL(response.url()).pathname.slice(1));
    });
    await page.addInitScript(watchFrames);
    await page.goto(served.url);
    await page.locator('#bar .clock .state', { hasText: 'Running' }).waitFor();
    await page.waitForTimeout(2000);
    const loaded = [...scripts];
    const whole = await tuned(page);
    await page.addStyleTag({ content: FOLDED });
    await page.waitForTimeout(1000);
    const folded = await tuned(page);
    const slow = await slower(page, () => tuned(page));
    const heaps = await heapsAtFullSpeed(page, minutes);
    await page.close();
    const second = await browser.newPage({ viewport: { width: 1440, height: 900 } });
    second.setDefaultTimeout(PATIENCE);
    await second.goto(served.url);
    await second.addStyleTag({ content: FOLDED });
    const beside = await besidePace(second, BESIDE);
    return {
      browser: browser.version(),
      folder: served.folder,
      scripts: loaded,
      whole,
      folded,
      slow,
      heaps,
      beside,
    };
  } finally {
    await browser.close();
    await served.close();
  }
}

async function tuned(page) {
  return { latencies: await page.evaluate(slide, SLIDES), tasks: await dragTasks(page, DRAG) };
}

/**
 * What is measured while the main thread has a quarter of its processor.
 * @template T
 * @param {import('playwright-core').Page} page
 * @param {() => Promise<T>} measure
 */
async function slower(page, measure) {
  const session = await page.context().newCDPSession(page);
  await session.send('Emulation.setCPUThrottlingRate', { rate: 4 });
  try {
    return await measure();
  } finally {
    await session.send('Emulation.setCPUThrottlingRate', { rate: 1 });
    await session.detach();
  }
}
