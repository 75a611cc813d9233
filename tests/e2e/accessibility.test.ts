import { expect, it } from 'vitest';
import { makeMove } from './support/controls.ts';
import { pageTests } from './support/page.ts';

const { open } = pageTests();

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
