import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { present } from '../../../shared/core/at.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';

const { open } = pageTests();

interface Watched {
  /** When the charts were drawn, ms of the page, while a search went on behind the dialog and at other times. */
  readonly drawn: { readonly busy: number[]; readonly idle: number[] };
}

/** Runs in the page: the pictures of any computer are drawn without a graphics card as far as the page knows; when its charts are is noted. */
function watchCharts(): void {
  const gl = WebGL2RenderingContext.prototype;
  const { getParameter } = gl;
  gl.getParameter = function (name: number) {
    return name === this.RENDERER ? 'Software' : getParameter.call(this, name);
  };
  const drawn: Watched['drawn'] = { busy: [], idle: [] };
  Object.assign(globalThis, { drawn });
  const canvas = CanvasRenderingContext2D.prototype;
  const { clearRect } = canvas;
  canvas.clearRect = function (...area) {
    if (this.canvas instanceof HTMLCanvasElement && this.canvas.closest('.charts')) {
      const cancel = [...document.querySelectorAll<HTMLButtonElement>('.pretune button')].find(
        ({ textContent }) => textContent === 'Cancel',
      );
      drawn[cancel && !cancel.hidden ? 'busy' : 'idle'].push(performance.now());
    }
    clearRect.apply(this, area);
  };
}

const drawn = (page: Page) => page.evaluate(() => (globalThis as unknown as Watched).drawn);

/** Between one drawing and the next, ms. */
const gaps = (times: readonly number[]) => times.slice(1).map((time, k) => time - present(times[k]));

it('moves ten times a second behind a dialog that is at work, and with the display again afterwards', async () => {
  const page = await open({
    stage: false,
    reducedMotion: 'no-preference',
    prepare: (tab) => tab.addInitScript(watchCharts),
  });
  await page.getByRole('button', { name: 'Pretune …', exact: true }).click();
  await page.getByRole('button', { name: 'Pretune', exact: true }).click();
  // It still moves.
  await eventually(async () => (await drawn(page)).busy.length).toBeGreaterThan(5);
  await page.getByRole('button', { name: 'Cancel', exact: true }).click();
  await eventually(() => page.locator('.pretune-status').textContent()).toContain('Cancelled');
  const { busy, idle } = await drawn(page);
  expect(Math.min(...gaps(busy))).toBeGreaterThan(90);
  // The dialog is still open, and nothing holds the picture up any more.
  const before = idle.length;
  await eventually(async () => Math.min(...gaps((await drawn(page)).idle.slice(before)))).toBeLessThan(60);
});
