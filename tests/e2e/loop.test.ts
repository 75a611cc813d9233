import { expect, it } from 'vitest';
import { DEFAULT_SCENE, sceneById } from '../../scenes/index.ts';
import { present } from '../../shared/core/at.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import { analyse } from '../../workers/analysis/analyse.ts';
import { choose, expectState } from './support/controls.ts';
import { handle, number, openLoop, verdict } from './support/loopControls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();

const SOFT = sceneById('soft-coil-mounting');

it('shows the figures of the analysis', async () => {
  const page = await open({ stage: false });
  const scene = DEFAULT_SCENE;
  await openLoop(page);
  const { figures } = analyse(scene.parameters, {
    ...startingPoint(scene.parameters),
    friction: 'sliding',
  });
  expect(await number(page, 'Phase margin')).toBeCloseTo(
    (present(figures.phaseMargin).value * 180) / Math.PI,
    1,
  );
  expect(await number(page, 'Crossover')).toBeCloseTo(present(figures.crossovers.at(-1)), 0);
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

it('puts a notch on the resonance of a soft coil mounting, which makes the loop stable', async () => {
  const page = await open({ stage: false });
  await choose(page, 'Scene', SOFT.title);
  await openLoop(page);
  await handle(page, 'Notch 1').focus();
  await page.keyboard.press('Delete');
  await eventually(() => verdict(page)).toMatch(/^Unstable/);
  const modulus = await number(page, 'Modulus margin');
  await page.getByRole('button', { name: /^Resonance at 19\d Hz: put a notch on it/ }).click();
  await eventually(() => verdict(page)).toMatch(/^Stable/);
  expect(await number(page, 'Modulus margin')).toBeGreaterThan(2 * modulus);
  const placed = Number(await handle(page, 'Notch 1').getAttribute('aria-valuenow'));
  // Coil and table on their mounting, √(k (1/m1 + 1/m2))/2π.
  const { linkStiffness, coilMass, tableMass, payload } = SOFT.parameters;
  const natural = Math.sqrt(linkStiffness * (1 / coilMass + 1 / (tableMass + payload))) / (2 * Math.PI);
  expect(placed / natural).toBeCloseTo(1, 1);
});

it('measures the loop and lays it over the analysis', async () => {
  const page = await open({ stage: false });
  await openLoop(page);
  await page.locator('summary', { hasText: 'Measure' }).click();
  await page.getByLabel('Time', { exact: true }).fill('1');
  await page.getByLabel('To', { exact: true }).fill('200');
  await page.getByRole('button', { name: 'Measure: stepped sine' }).click();
  const said = page.locator('.loop-readout');
  await eventually(() => said.textContent()).toMatch(/^Measured by stepped sine/);
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
