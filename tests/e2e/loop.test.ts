import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { present } from '../../shared/core/at.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import { analyse } from '../../workers/analysis/analyse.ts';
import { expectState } from './support/controls.ts';
import { handle, number, openLoop } from './support/loopControls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

it('shows the figures of the analysis', async () => {
  const page = await open({ stage: false });
  const scene = DEFAULT_SCENE;
  await openLoop(page);
  // The panel says what the loop has, beside the crossover that one may wish for.
  await page.getByText(/^Crossover of the loop now: \d+/).waitFor();
  const { figures } = analyse(scene.parameters, {
    ...startingPoint(scene.parameters),
    friction: 'sliding',
  });
  expect(await number(page, 'Phase margin')).toBeCloseTo(
    (present(figures.phaseMargin).value * 180) / Math.PI,
    1,
  );
  expect(await number(page, 'Crossover')).toBeCloseTo(present(figures.crossover), 0);
  expect(await number(page, 'Modulus margin')).toBeCloseTo(figures.modulusMargin.value, 3);
});

it('drags the crossover with the mouse as one step', async () => {
  const page = await open({ stage: false });
  await openLoop(page);
  const before = await number(page, 'Crossover');
  const gain = await page.locator('#field-Kp').inputValue();
  const box = present(await handle(page, 'Crossover').boundingBox());
  await page.mouse.move(box.x + box.width / 2, box.y + box.height / 2);
  await page.mouse.down();
  await page.mouse.move(box.x + box.width / 2 - 30, box.y, { steps: 6 });
  await page.mouse.up();
  await eventually(() => number(page, 'Crossover')).toBeLessThan(0.9 * before);
  await page.getByRole('button', { name: 'Undo', exact: true }).click();
  await eventually(() => page.locator('#field-Kp').inputValue()).toBe(gain);
});

it('opens as it was left: height, folded parts, size and operating point', async () => {
  const page = await open({ stage: false });
  await openLoop(page);
  await page.locator('summary', { hasText: 'Point' }).click();
  await page.getByRole('combobox', { name: 'Temperature' }).selectOption('winding at its limit');
  await page.keyboard.press('Escape');
  await page.getByRole('separator', { name: 'Height of the charts' }).focus();
  await page.keyboard.press('End');
  await page.keyboard.press('g');
  await page.keyboard.press('p');
  const height = () =>
    page.locator('#chart-area').evaluate((area) => area.getBoundingClientRect().height / innerHeight);
  const left = await height();
  await page.reload();
  await expectState(page, 'Paused');
  await eventually(height).toBeCloseTo(left, 2);
  expect(await page.locator('#gauges').isVisible()).toBe(false);
  expect(await page.locator('html').getAttribute('data-size')).toBe('presenter');
  await openLoop(page);
  await page.locator('summary', { hasText: 'Point' }).click();
  expect(await page.getByRole('combobox', { name: 'Temperature' }).inputValue()).toBe('winding at its limit');
  await page.getByText('winding at 130 °C').waitFor();
});

it('reads the plots under a cursor that keys move', async () => {
  const page = await open({ stage: false });
  await openLoop(page);
  const plot = page.getByRole('group', { name: 'Bode plot: Open loop' });
  await plot.focus();
  await page.keyboard.press(']');
  const readout = page.locator('.loop-readout');
  await eventually(() => readout.textContent()).toMatch(/Hz: \|L\| .* phase .*°; \|S\| .*; stiffness .* N/);
  const before = await readout.textContent();
  await page.keyboard.press('}');
  await eventually(() => readout.textContent()).not.toBe(before);
  // Nothing stands out of the line of L there.
  await page.keyboard.press('n');
  await eventually(() => readout.textContent()).toMatch(/^No resonance/);
});
