import { it } from 'vitest';
import { pageTests } from '../support/page.ts';
import { eventually } from '../support/patience.ts';
import { openStudy, show } from './studyControls.ts';

const { open } = pageTests();

it('says how probable the choice is within ranges that a person enters', async () => {
  const page = await open({ stage: false });
  await openStudy(page);
  await show(page, 'Verdict');
  const odds = page.locator('.verdict-odds');
  await eventually(() => odds.textContent()).toMatch(/^Of \d+ jobs drawn within these ranges/);
  await page.locator('.verdict-sure summary').click();
  await page.locator('#range-price').fill('60');
  await page.locator('#range-price').press('Tab');
  await eventually(() => page.locator('#range-price-problem').textContent()).toContain(
    '60 % is outside 0 % to 50 %',
  );
  await page.locator('#range-price').fill('0');
  await page.locator('#range-price').press('Tab');
  await eventually(() => odds.textContent()).toMatch(/^Of \d+ jobs .* the choice stays A in all of them/);
});
