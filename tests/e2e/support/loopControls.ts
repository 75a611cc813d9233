import type { Page } from 'playwright-core';
import { press } from './controls.ts';
import { eventually } from './patience.ts';

/** The view of the loop: what a person does there and reads from it. */

export const verdict = (page: Page) => page.locator('.loop-verdict').textContent();
export const handle = (page: Page, name: string) => page.getByRole('slider', { name, exact: true });

/** A figure of the table as it reads, e.g. `51.0°`. */
const figure = (page: Page, label: string) =>
  page
    .getByRole('region', { name: 'Figures of the loop' })
    .getByRole('row', { name: new RegExp(`^${label}`) })
    .getByRole('cell')
    .first()
    .textContent();

export const number = async (page: Page, label: string) =>
  Number.parseFloat((await figure(page, label)) ?? '');

export async function openLoop(page: Page): Promise<void> {
  await page.keyboard.press('b');
  await eventually(() => verdict(page)).toMatch(/table|Unstable/);
}

/** The parameters that the axis has taken by its next samples, as its recording tells. */
export async function parametersOfAxis(page: Page): Promise<Record<string, number>> {
  for (let tick = 0; tick < 4; tick++) await press(page, 'Tick');
  const download = page.waitForEvent('download');
  await page.getByRole('button', { name: 'File', exact: true }).click();
  await page.getByRole('button', { name: 'Save tuning session' }).click();
  const chunks = await (await (await download).createReadStream()).toArray();
  const { scene, events } = JSON.parse(Buffer.concat(chunks).toString());
  const changed = events.flatMap((event: { changes?: object }) => (event.changes ? [event.changes] : []));
  return Object.assign({}, scene.parameters, ...changed);
}
