import { mkdtempSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, it } from 'vitest';
import { sceneById } from '../../scenes/index.ts';
import { present } from '../../shared/core/at.ts';
import { movedMass } from '../../shared/core/movedMass.ts';
import { startingPoint } from '../../shared/protocol/analysis.ts';
import { responseRows } from '../../src/app/save/responseRows.ts';
import { analyse } from '../../workers/analysis/analyse.ts';
import { choose, type } from './support/controls.ts';
import { handle, number, openLoop, parametersOfAxis, verdict } from './support/loopControls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';
import { violations } from './support/violations.ts';

const { open } = pageTests();

const SOFT = sceneById('soft-coil-mounting');

it('moves the crossover by key: figures and axis follow, one step of undo takes it back', async () => {
  const page = await open({ stage: false });
  await openLoop(page);
  const before = await number(page, 'Crossover');
  const gain = await page.locator('#field-Kp').inputValue();
  await handle(page, 'Crossover').focus();
  await page.keyboard.press('Shift+ArrowRight');
  await eventually(async () => (await number(page, 'Crossover')) / before).toBeCloseTo(1.1, 2);
  const moved = await page.locator('#field-Kp').inputValue();
  expect(moved).not.toBe(gain);
  expect((await parametersOfAxis(page)).Kp).toBe(Number(moved));
  await page.keyboard.press('Control+z');
  await eventually(() => page.locator('#field-Kp').inputValue()).toBe(gain);
});

it('can be made larger by keys and by its edge, and has no serious violation of accessibility', async () => {
  const page = await open({ stage: false, viewport: { width: 1440, height: 900 } });
  await openLoop(page);
  const height = async () => present(await page.locator('#loop').boundingBox()).height;
  const first = await height();
  await page.keyboard.press('y');
  await eventually(height).toBeGreaterThan(first + 100);
  await page.getByRole('group', { name: 'Eigenvalues' }).waitFor();
  const enlarged = await height();
  await page.getByRole('separator', { name: 'Height of the charts' }).focus();
  await page.keyboard.press('ArrowDown');
  await eventually(height).toBeLessThan(enlarged);
  await page.locator('.loop-tools').getByRole('button', { name: 'Pin', exact: true }).click();
  await page.locator('summary', { hasText: 'Measure' }).click();
  expect(await violations(page)).toEqual([]);
});

it('lays a response measured on the real axis under the model, fits it, and puts it on the bench', async () => {
  // The real axis has a part that swings at 160 Hz; the bench does not know of it.
  const scene = SOFT;
  const part = { mode1: 'table', mode1Mass: 4, mode1Frequency: 160, mode1Damping: 0.02 } as const;
  const analysis = analyse(
    { ...scene.parameters, ...part },
    { ...startingPoint(scene.parameters), friction: 'sliding' },
  );
  const rows = responseRows(analysis).map((row) => row.slice(0, 3).join(';'));
  const path = join(mkdtempSync(join(tmpdir(), 'response-')), 'response.csv');
  writeFileSync(path, ['Axis 4, measured at the press', ...rows].join('\n'));

  const page = await open({ stage: false });
  await choose(page, 'Scene', scene.title);
  await page.getByPlaceholder('Find a parameter').fill('payload');
  await type(page, 'payload', String(scene.parameters.payload + 5));
  // The gains on the bench are those of the measurement.
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByText('Measured frequency response …', { exact: true }).click();
  await page.locator('#response-file').setInputFiles(path);
  await page.getByRole('button', { name: 'Show and fit', exact: true }).click();
  await page.getByText(/\d+ points are shown over the plots of the loop/).waitFor();
  const mass = page
    .getByRole('row', { name: /^Moved mass/ })
    .getByRole('cell')
    .first();
  await mass.waitFor();
  expect(Number.parseFloat(present(await mass.textContent())) / movedMass(scene.parameters)).toBeCloseTo(
    1,
    1,
  );
  const found = await page.getByRole('row', { name: /^Flexible part 1, on the table/ }).textContent();
  expect(Number(/([\d.]+) Hz/.exec(found ?? '')?.[1]) / part.mode1Frequency).toBeCloseTo(1, 1);
  // A rigid mass leaves most, and the shape that was taken less than a tenth of it.
  const left = page
    .getByRole('row', { name: /^One rigid mass \d/ })
    .getByRole('cell')
    .first();
  const most = Number.parseFloat((await left.textContent()) ?? '');
  const rest = page
    .getByRole('row', { name: /^Left between response and fit/ })
    .getByRole('cell')
    .first();
  expect(Number.parseFloat((await rest.textContent()) ?? '')).toBeLessThan(0.1 * most);
  await page.getByRole('button', { name: 'Put the fitted values on the bench', exact: true }).click();
  await page.getByText('The bench has the fitted values').waitFor();
  await page.keyboard.press('Escape');
  const payload = Number(await page.locator('#field-payload').inputValue());
  expect(payload / scene.parameters.payload).toBeCloseTo(1, 1);
});

it('puts a notch on the resonance of a soft coil mounting, which makes the loop stable', async () => {
  const page = await open({ stage: false });
  await choose(page, 'Scene', SOFT.title);
  await openLoop(page);
  await handle(page, 'Filter 1, notch').focus();
  await page.keyboard.press('Delete');
  await eventually(() => verdict(page)).toMatch(/^Unstable/);
  const modulus = await number(page, 'Modulus margin');
  await page.getByRole('button', { name: /^Resonance at 19\d Hz: put a notch on it/ }).click();
  await eventually(() => verdict(page)).toMatch(/^Stable/);
  expect(await number(page, 'Modulus margin')).toBeGreaterThan(2 * modulus);
  const placed = Number(await handle(page, 'Filter 1, notch').getAttribute('aria-valuenow'));
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

it('shapes the loop with a lead-lag by its handle, and takes a filter by its coefficients', async () => {
  const page = await open({ stage: false });
  await openLoop(page);
  await page.locator('.panel-group-title', { hasText: /^Filters of the loop/ }).click();
  await page.locator('#field-filter4').selectOption('lead-lag');
  await page.locator('#field-filter4Frequency').fill('60');
  await page.locator('#field-filter4Frequency').press('Enter');
  const before = await number(page, 'Crossover');
  const lead = handle(page, 'Filter 4, lead-lag');
  await lead.focus();
  await page.keyboard.press('Shift+ArrowUp');
  // √r is at its centre: ten per cent more there is 21 per cent more far above.
  const ratio = page.locator('#field-filter4Ratio');
  await eventually(async () => Number(await ratio.inputValue())).toBeCloseTo(3 * 1.1 ** 2, 2);
  await eventually(() => number(page, 'Crossover')).toBeGreaterThan(before);
  expect((await parametersOfAxis(page)).filter4Ratio).toBeCloseTo(3.63, 2);

  await page.locator('#field-filter4').selectOption('coefficients');
  await page.locator('#field-filter4A2').fill('1');
  await page.locator('#field-filter4A2').press('Enter');
  await page
    .getByText(/Filter 4 is unstable with .* poles lie on or outside the unit circle/)
    .first()
    .waitFor();
  await page.locator('#field-filter4A2').press('Escape');
  await page.locator('#field-filter4B0').fill('0.5');
  await page.locator('#field-filter4B0').press('Enter');
  await page
    .getByText(/Filter 4 has a gain of 0\.500 at standstill/)
    .first()
    .waitFor({ state: 'attached' });
});
