import { launchBrowser } from '../tools/browser.mjs';
import { usedMemory, workerSession } from '../tools/memory.mjs';
import { servePage } from '../tools/servePage.mjs';

const SLIDES = 30;
const MINUTE = 60_000;

/**
 * Drives the built page in a headless browser, as a person at the gain sliders would.
 *
 * - `latency`: display refreshes from a slider's input to the chart that is drawn with what the axis did under it, one per
 *   slide: the page sends the change, the next frame asked for after that holds its effect, and is drawn on arrival.
 * - `longestTask`: longest unbroken stretch of work on the main thread meanwhile, ms; 50 is the least that a browser reports.
 * - `heaps`: memory that page and simulation hold, buffers included, MB each, after each of `minutes` at full speed.
 *
 * The gains are slid three times: as it is; with the stage folded away, which tells what drawing by software costs; and so on a processor
 * that is four times slower.
 *
 * @param {number[]} minutes
 */
export async function pagePace(minutes) {
  const served = await servePage();
  const browser = await launchBrowser();
  try {
    const page = await browser.newPage({ viewport: { width: 1280, height: 720 } });
    const scripts = [];
    page.on('response', (response) => {
      if (response.url().endsWith('.js')) scripts.push(new URL(response.url()).pathname.slice(1));
    });
    await page.addInitScript(watchFrames);
    await page.goto(served.url);
    await page.locator('.clock .state', { hasText: 'Running' }).waitFor();
    await page.waitForTimeout(2000);
    const whole = await page.evaluate(slide, SLIDES);
    await page.addStyleTag({ content: '#stage > .stage { display: none }' });
    await page.waitForTimeout(1000);
    const folded = await page.evaluate(slide, SLIDES);
    const slow = await slower(page, () => page.evaluate(slide, SLIDES));
    const heaps = await heapsAtFullSpeed(page, minutes);
    return { browser: browser.version(), folder: served.folder, scripts, whole, folded, slow, heaps };
  } finally {
    await browser.close();
    await served.close();
  }
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

/** Runs in the page before its own scripts: counts refreshes, and notes when changes go out and frames come in. */
function watchFrames() {
  const seen = { refresh: 0, changeAt: null, askedAfterChange: false, drawnAt: null, longestTask: 0 };
  globalThis.seen = seen;
  const tick = () => {
    seen.refresh++;
    requestAnimationFrame(tick);
  };
  requestAnimationFrame(tick);

  const post = Worker.prototype.postMessage;
  Worker.prototype.postMessage = function (message, ...rest) {
    if (message?.path?.[0] === 'change') seen.changeAt ??= seen.refresh;
    return post.call(this, message, ...rest);
  };
  const ask = MessagePort.prototype.postMessage;
  MessagePort.prototype.postMessage = function (message, ...rest) {
    if (message && 'bins' in message && seen.changeAt !== null) seen.askedAfterChange = true;
    return ask.call(this, message, ...rest);
  };
  const { set } = Object.getOwnPropertyDescriptor(MessagePort.prototype, 'onmessage');
  Object.defineProperty(MessagePort.prototype, 'onmessage', {
    set(listener) {
      set.call(this, (event) => {
        if (seen.askedAfterChange && event.data?.status) seen.arrived = true;
        listener(event);
      });
    },
  });
  const clear = CanvasRenderingContext2D.prototype.clearRect;
  CanvasRenderingContext2D.prototype.clearRect = function (...box) {
    if (seen.arrived && this.canvas.className === 'charts-canvas') seen.drawnAt ??= seen.refresh;
    return clear.apply(this, box);
  };
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) seen.longestTask = Math.max(seen.longestTask, duration);
  }).observe({ type: 'longtask' });
}

/** Runs in the page: moves the damping slider to and fro and waits for the chart each time. */
async function slide(times) {
  const { seen } = globalThis;
  const refreshed = () => new Promise((done) => requestAnimationFrame(done));
  const slider = document.querySelector('#field-Kd').closest('.field').querySelector('input[type=range]');
  const start = Number(slider.value);
  const latency = [];
  seen.longestTask = 0;
  const from = { refresh: seen.refresh, time: performance.now() };
  for (let i = 0; i < times; i++) {
    Object.assign(seen, { changeAt: null, askedAfterChange: false, arrived: false, drawnAt: null });
    const at = seen.refresh;
    slider.value = String(start + (i % 2 ? 0 : 10));
    slider.dispatchEvent(new Event('input', { bubbles: true }));
    while (seen.drawnAt === null) await refreshed();
    latency.push(seen.drawnAt - at);
  }
  const refresh = (performance.now() - from.time) / (seen.refresh - from.refresh);
  return { latency, refresh, longestTask: seen.longestTask };
}

/** Memory in use after a collection, MB, in the page and in its simulation worker. */
async function heapsAtFullSpeed(page, minutes) {
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
