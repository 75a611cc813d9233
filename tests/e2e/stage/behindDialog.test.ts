import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { openLongSearch } from '../support/longSearch.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();

interface Watched {
  /** Times of the refreshes with which the first chart was drawn, ms of the page. */
  readonly drawn: {
    /** While a search went on behind the dialog: what was drawn within a refresh. */
    readonly busy: number[];
    /** At other times: also what was drawn after one, ahead of the next. */
    readonly idle: number[];
  };
}

/** Runs in the page: the pictures of any computer are drawn without a graphics card as far as the page knows; when its first chart is drawn is noted. */
function watchChart(): void {
  const gl = WebGL2RenderingContext.prototype;
  const { getParameter } = gl;
  gl.getParameter = function (name: number) {
    return name === this.RENDERER ? 'Software' : getParameter.call(this, name);
  };
  const refresh = { time: 0, isNow: false };
  const { requestAnimationFrame } = globalThis;
  globalThis.requestAnimationFrame = (callback) =>
    requestAnimationFrame((time) => {
      Object.assign(refresh, { time, isNow: true });
      callback(time);
      refresh.isNow = false;
    });
  const drawn: Watched['drawn'] = { busy: [], idle: [] };
  Object.assign(globalThis, { drawn });
  const canvas = CanvasRenderingContext2D.prototype;
  const { clearRect } = canvas;
  canvas.clearRect = function (...area) {
    if (this.canvas === document.querySelector('.charts canvas')) {
      const cancel = [...document.querySelectorAll<HTMLButtonElement>('.pretune button')].find(
        ({ textContent }) => textContent === 'Cancel',
      );
      if (!cancel || cancel.hidden) drawn.idle.push(refresh.time);
      else if (refresh.isNow) drawn.busy.push(refresh.time);
    }
    clearRect.apply(this, area);
  };
}

const drawn = (page: Page) => page.evaluate(() => (globalThis as unknown as Watched).drawn);

/** From each time to the one so many further on, of times that differ, ms. */
function spans(times: readonly number[], further: number): number[] {
  const different = [...new Set(times)];
  return different.slice(further).map((time, k) => time - present(different[k]));
}

it('moves ten times a second behind a dialog that is at work, and with the display again afterwards', async () => {
  const page = await open({
    stage: false,
    reducedMotion: 'no-preference',
    prepare: (tab) => tab.addInitScript(watchChart),
  });
  await openLongSearch(page);
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  // It still moves.
  await eventually(async () => (await drawn(page)).busy.length).toBeGreaterThan(5);
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => page.locator('.pretune-status').textContent()).toContain('Cancelled');
  const { busy, idle } = await drawn(page);
  expect(Math.min(...spans(busy, 1))).toBeGreaterThan(94.9);
  // The dialog is still open, and nothing holds the picture up any more: three pictures in less than the tenth of a second that one took.
  const before = idle.length;
  await eventually(async () => Math.min(...spans((await drawn(page)).idle.slice(before), 2))).toBeLessThan(
    70,
  );
});
