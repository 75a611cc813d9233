import { expect, it } from 'vitest';
import { present } from '../../shared/core/at.ts';
import { longestSheet } from './support/longestSheet.ts';
import { pageTests } from './support/page.ts';
import { pressUntil } from './support/pressUntil.ts';

const { blank, open } = pageTests();

async function openSheet() {
  const page = await blank({ colorScheme: 'dark' });
  await page.setContent(longestSheet());
  return page;
}

it('is black on white, its text 14 px and more but for indices, and fits the width', async () => {
  const page = await openSheet();
  const seen = await page.evaluate(() => {
    const sizes = [...document.querySelectorAll('body *')]
      .filter((each) => each.tagName !== 'SUB' && each.matches(':not(style)'))
      .filter((each) => [...each.childNodes].some((node) => node.nodeType === 3 && node.textContent?.trim()))
      .map((each) => Number.parseFloat(getComputedStyle(each).fontSize));
    const { backgroundColor, color } = getComputedStyle(document.body);
    return {
      smallest: Math.min(...sizes),
      backgroundColor,
      color,
      overflow: document.documentElement.scrollWidth - document.documentElement.clientWidth,
    };
  });
  expect(seen).toEqual({
    smallest: 14,
    backgroundColor: 'rgb(255, 255, 255)',
    color: 'rgb(0, 0, 0)',
    overflow: 0,
  });
});

it('shows every value whole in its dialog', async () => {
  const page = await open({ stage: false });
  const frame = 'iframe[title="Gain sheet as printed"]';
  await pressUntil(page, 'e', page.locator(frame));
  const sheet = page.frameLocator(frame);
  await sheet.getByText('peak/(count/sample)').first().waitFor();
  const tooWide = await sheet
    .locator('html')
    .evaluate((html) =>
      [html, ...html.querySelectorAll('td, th')]
        .filter(({ scrollWidth, clientWidth }) => scrollWidth > clientWidth)
        .map(({ textContent }) => textContent?.slice(0, 60)),
    );
  expect(tooWide).toEqual([]);
});

it.each(['A4', 'Letter'])(
  'prints on %s: every page numbered, nothing wider than the paper',
  async (format) => {
    const page = await openSheet();
    const pdf = await page.pdf({ format });
    const pages = present(pdf.toString('latin1').match(/\/Type\s*\/Page\b/g)).length;
    expect(pages).toBeGreaterThan(6);
    expect(pages).toBeLessThan(15);
    // Printed width of the paper less its margins, at 96 px an inch.
    const width = ((format === 'A4' ? 210 : 215.9) - 28) * (96 / 25.4);
    await page.emulateMedia({ media: 'print' });
    await page.setViewportSize({ width: Math.floor(width), height: 900 });
    const overflow = await page.evaluate(
      () => document.documentElement.scrollWidth - document.documentElement.clientWidth,
    );
    expect(overflow).toBe(0);
  },
);
