import { expect, inject, it } from 'vitest';
import { DEFAULT_SCENE, SHELF } from '../../../scenes/index.ts';
import { writeLink } from '../../../shared/files/sceneLink.ts';
import { expectState, type } from '../support/controls.ts';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { accept, gain, kept } from './keptPages.ts';

const { open } = pageTests();

it('offers a study as it was left, also to a page that opened a link', async () => {
  const page = await open({ stage: false });
  await page.getByRole('button', { name: 'Which drive?' }).click();
  await page.locator('#job-payload').fill('6.5');
  await page.locator('#job-payload').press('Tab');
  await page.getByText('Carry 6.5 kg').waitFor();
  await eventually(() => kept(page)).toBe(1);
  await page.goto('about:blank');
  const scene = { ...DEFAULT_SCENE, parameters: { ...DEFAULT_SCENE.parameters, Kp: 1.2e6 } };
  await page.goto(`${inject('pageUrl')}#${writeLink(scene, SHELF)}`);
  await expectState(page, 'Paused');
  expect(Number(await gain(page))).toBe(1.2e6);
  await accept(page);
  await page.getByText('Carry 6.5 kg').waitFor();
});

it('keeps the work of two tabs apart', async () => {
  const page = await open({ stage: false });
  const other = await open({ stage: false, stored: true });
  await type(page, 'Kp', '1.5e6');
  await eventually(() => kept(page)).toBe(1);
  await type(other, 'Kp', '2.5e6');
  await eventually(() => kept(page)).toBe(2);
  // The other tab is still open and has its own work.
  await page.reload();
  await accept(page);
  await eventually(() => gain(page)).toBe('1.5e6');
});

it('says once that nothing is kept where the browser refuses', async () => {
  const page = await open({ stage: false });
  await page.evaluate(() => {
    IDBFactory.prototype.open = () => {
      throw new DOMException('refused', 'SecurityError');
    };
  });
  const note = page.locator('.note', { hasText: 'This browser keeps nothing for this page' });
  await type(page, 'Kp', '1.5e6');
  await note.waitFor();
  await note.waitFor({ state: 'hidden' });
  await type(page, 'Kp', '1.6e6');
  // Long enough for the change to be kept, if it were.
  await page.waitForTimeout(1000);
  expect(await note.isVisible()).toBe(false);
});
