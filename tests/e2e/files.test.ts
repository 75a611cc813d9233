import type { Page } from 'playwright-core';
import { expect, it } from 'vitest';
import { DEFAULT_SCENE } from '../../scenes/index.ts';
import { writeScene } from '../../shared/files/sceneFile.ts';
import { expectState, makeMove, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { eventually } from './support/patience.ts';

const { open } = pageTests();
const scene = DEFAULT_SCENE;

async function openFile(page: Page, text: string): Promise<void> {
  const chooser = page.waitForEvent('filechooser');
  await page.keyboard.press('Control+o');
  const file = { name: 'shift.scene.json', mimeType: 'application/json', buffer: Buffer.from(text) };
  await (await chooser).setFiles(file);
}

// What is wrong with a file is told apart in tests/shared/files; here one stands for all.
it('refuses a file with a misspelt name, names it, and leaves the bench alone', async () => {
  const page = await open({ stage: false });
  const entries = JSON.parse(writeScene(scene));
  await openFile(page, JSON.stringify({ ...entries, parameters: { ...entries.parameters, paylod: 5 } }));
  const dialog = page.getByRole('dialog', { name: 'shift.scene.json was not opened' });
  await dialog.waitFor();
  expect(await dialog.textContent()).toMatch(/paylod.*payload/);
  await dialog.getByRole('button', { name: 'Close' }).click();
  await page.getByRole('heading', { name: scene.title }).waitFor();
  await makeMove(page);
});

it('refuses a file that is cut off', async () => {
  const page = await open({ stage: false });
  await openFile(page, writeScene(scene).slice(0, 300));
  await page.getByRole('dialog', { name: 'shift.scene.json was not opened' }).waitFor();
});

it('saves a tuned scene to a file that opens again as it was', async () => {
  const page = await open({ stage: false });
  await type(page, 'Kp', '1.5e6');
  const download = page.waitForEvent('download');
  await page.keyboard.press('Control+s');
  const stream = await (await download).createReadStream();
  const text = Buffer.concat(await stream.toArray()).toString();
  expect(JSON.parse(text).parameters.Kp).toBe(1.5e6);

  await page.reload();
  await expectState(page, 'Paused');
  await openFile(page, text);
  await eventually(() => page.locator('#field-Kp').inputValue()).toBe('1.5e6');
});
