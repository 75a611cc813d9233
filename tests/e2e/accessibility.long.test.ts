import { expect, it } from 'vitest';
import { expectState, makeMove, press, type } from './support/controls.ts';
import { pageTests } from './support/page.ts';
import { violations } from './support/violations.ts';

const { open } = pageTests();

it('the page has no serious violation in dark, in its dialogs, at presenter size and tripped', async () => {
  const page = await open({ stage: false, colorScheme: 'dark' });
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('?');
  await page.getByRole('dialog', { name: 'Keys' }).waitFor();
  expect(await violations(page)).toEqual([]);
  await page.keyboard.press('Escape');
  await type(page, 'Kp', '1e9');
  await press(page, 'Run');
  await expectState(page, 'Tripped');
  expect(await violations(page)).toEqual([]);
  await page.getByRole('heading', { name: 'Tuning' }).click();
  await page.keyboard.press('p');
  expect(await violations(page)).toEqual([]);
});

it('has no serious violation in light, with everything shown', async () => {
  const page = await open();
  await makeMove(page);
  expect(await violations(page)).toEqual([]);
});

it('can be run by the keyboard alone', async () => {
  const page = await open({ stage: false });
  await page.keyboard.press(' ');
  await expectState(page, 'Running');
  await page.keyboard.press(' ');
  await expectState(page, 'Paused');

  // Every stop of the Tab key shows where it is.
  const unseen: string[] = [];
  for (let stop = 0; stop < 60; stop++) {
    await page.keyboard.press('Tab');
    const name = await page.evaluate(() => {
      const at = document.activeElement as HTMLElement;
      if (at === document.body) return null;
      const { outlineStyle, outlineWidth, boxShadow } = getComputedStyle(at);
      const seen = (outlineStyle !== 'none' && Number.parseFloat(outlineWidth) > 0) || boxShadow !== 'none';
      return seen ? null : at.outerHTML.slice(0, 100);
    });
    if (name) unseen.push(name);
  }
  expect(unseen).toEqual([]);
});
