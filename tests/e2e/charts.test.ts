import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { present } from '../../shared/core/at.ts';
import { movedMass } from '../../shared/core/movedMass.ts';
import { measureRun } from '../../workers/run/measureRun.ts';
import { clock, makeMove, press, readQuantity } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();
const scene = DEFAULT_SCENE;
const { start, stroke, peakCurrent, jerk, positionDivider, currentRate } = scene.parameters;

const charts = (page: Page) => page.getByRole('group', { name: 'Strip charts' });
const spoken = (page: Page) => charts(page).getByRole('status').textContent();

it('reads out under the cursor where the move ended: at its commanded end, standing still', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  await charts(page).focus();
  await page.keyboard.press('[');
  await eventually(() => spoken(page)).toMatch(/Position/);
  const text = ((await spoken(page)) ?? '').replaceAll('−', '-');
  // The window of the opening scene is smaller than the last digit that is shown, 0.1 mm.
  expect(text).toContain(`Setpoint ${((start + stroke) * 1e3).toFixed(1)}`);
  expect(text).toContain(`Table ${((start + stroke) * 1e3).toFixed(1)}`);
  expect(text).toMatch(/Speed, m\/s: Table 0\.0+, Set 0\.0+;/);
});

it('shows on the gauges the peak current and force that the model computes', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  const [move] = measureRun(scene, 1).moves;
  const gauge = async (name: string) => {
    const text = () => page.getByRole('meter', { name }).getAttribute('aria-valuetext');
    await eventually(text).toMatch(/peak \d/);
    const [, peak, limit, unit] = present(/peak ([\d.]+) of ([\d.]+) ([^\s,]+)/.exec((await text()) ?? ''));
    return [readQuantity(`${peak} ${unit}`), readQuantity(`${limit} ${unit}`)];
  };
  const [current, limit] = await gauge('Current');
  expect(present(current)).toBeCloseTo(present(move).peakCurrent, 1);
  expect(limit).toBeCloseTo(peakCurrent, 1);
  const [force] = await gauge('Motor force');
  expect(Math.abs(present(force) - present(move).peakForce)).toBeLessThanOrEqual(0.5);
});

it.each([
  [1024, 768],
  [1280, 720],
])('keeps all charts and gauges in sight at %d by %d', async (width, height) => {
  const page = await open({ stage: false, viewport: { width, height } });
  await makeMove(page);
  for (const name of ['Strip charts', 'Readings']) {
    const hidden = await page
      .getByRole('group', { name })
      .evaluate(({ scrollHeight, clientHeight }) => scrollHeight - clientHeight);
    expect(hidden, name).toBe(0);
  }
});

/** Motor force as the gauge has it, without a sign, and the ends of what the legend of its chart has, N, at a moment at which both are seen: after a refresh was drawn. */
const FORCES = `new Promise((resolve) => requestAnimationFrame(() => {
  const number = (text) => Number(text.replace('−', '-'));
  const gauge = [...document.querySelectorAll('.gauge')].find(({ textContent }) => textContent.startsWith('Motor force'));
  const line = [...document.querySelectorAll('.charts-legend button')].find(({ textContent }) => textContent.startsWith('Motor'));
  resolve([
    number(/Motor force\\s*([−\\d.]+)/.exec(gauge.innerText)[1]),
    line.querySelector('.charts-value').textContent.split('…').map(number),
  ]);
}))`;

/**
 * How far the gauge may be from the range in the legend, N. Both are rounded to whole newtons, and the charts have closed samples of the position
 * loop only: the gauge is ahead by one at most, in which the force changes by the jerk of the command and as much again by the loop.
 */
const AHEAD = 1 + (2 * jerk * movedMass(scene.parameters) * positionDivider) / currentRate;

it('legends and gauges tell of one moment, whenever they are looked at', async () => {
  const page = await open({ stage: false });
  await press(page, 'Run');
  await eventually(() => clock(page)).toBeGreaterThan(0.2);
  for (let looked = 0; looked < 12; looked++) {
    const [gauge, ends] = await page.evaluate<[number, number[]]>(FORCES);
    const isIn = (force: number) => force > Math.min(...ends) - AHEAD && force < Math.max(...ends) + AHEAD;
    expect(isIn(gauge) || isIn(-gauge), `${gauge} N on the gauge, ${ends} N in the legend`).toBe(true);
    await page.waitForTimeout(70);
  }
});
