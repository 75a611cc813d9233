import { expect, it } from 'vitest';
import { expectState, makeMove } from './controls.ts';
import { pageTests } from './page.ts';
import { violations } from './violations.ts';

const { open } = pageTests();

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

it('has no text below 14 px', async () => {
  const page = await open({ stage: false });
  await makeMove(page);
  const small = await page.evaluate(() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    const found = new Set<string>();
    for (let node = walker.nextNode(); node; node = walker.nextNode()) {
      const parent = node.parentElement;
      const text = node.textContent?.trim();
      if (!parent || !text) continue;
      if (parent.closest('script, style, svg title') || parent.getClientRects().length === 0) continue;
      const size = Number.parseFloat(getComputedStyle(parent).fontSize);
      if (size < 14) found.add(`${size} px: ${text.slice(0, 40)}`);
    }
    return [...found];
  });
  expect(small).toEqual([]);
});
